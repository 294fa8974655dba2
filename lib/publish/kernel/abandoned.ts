/**
 * Ends kernels whose publisher was killed while it started them.
 *
 * Once the prelude has run, a kernel ends by itself when its publisher is gone. Before that only the folder of its
 * connection file knows of it; the next start looks for such folders and asks those kernels, with their own key, to end.
 *
 * @module
 */
import process from "node:process";
import type { Connection } from "./connection.ts";
import { MessageCodec } from "./message.ts";
import { ZmtpSocket } from "./zmtp.ts";

const PREFIX = "lakeproof-kernel-";
const OWNER = "publisher";

/**
 * Writes into a kernel's folder which process it belongs to.
 *
 * @param folder absolute path
 */
export async function markFolder(folder: string): Promise<void> {
  await Deno.writeTextFile(`${folder}/${OWNER}`, String(Deno.pid));
}

/**
 * Ends the kernels of publishers that are no more, and removes their folders.
 *
 * @param beside a kernel's folder; its neighbours are looked at
 */
export async function endAbandonedKernels(beside: string): Promise<void> {
  const parent = beside.replace(/[\\/][^\\/]*$/, "");
  for await (const entry of Deno.readDir(parent)) {
    if (!entry.isDirectory || !entry.name.startsWith(PREFIX)) continue;
    const folder = `${parent}/${entry.name}`;
    try {
      const owner = Number(await Deno.readTextFile(`${folder}/${OWNER}`));
      if (!Number.isInteger(owner) || owner <= 0 || isAlive(owner)) continue;
      await askToEnd(folder);
      await Deno.remove(folder, { recursive: true });
    } catch {
      // Another user's, or another publisher was quicker: not ours to mend.
    }
  }
}

async function askToEnd(folder: string): Promise<void> {
  try {
    const file = await Deno.readTextFile(`${folder}/connection.json`);
    const connection: Connection = JSON.parse(file);
    const codec = await MessageCodec.create(connection.key);
    const control = await ZmtpSocket.connect(connection.control_port, "DEALER");
    await control.send(
      await codec.encode(codec.compose("shutdown_request", { restart: false })),
    );
    const second = new Promise((resolve) => setTimeout(resolve, 1000));
    await Promise.race([control.receive(), second]);
    control.close();
  } catch {
    // It never listened, or has ended: then only the folder is left.
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as { code?: string }).code === "EPERM";
  }
}
