/**
 * Starts a kernel and opens its sockets.
 *
 * @module
 */
import { endAbandonedKernels, markFolder } from "./abandoned.ts";
import { startBroker } from "./broker.ts";
import { type Connection, freeConnection } from "./connection.ts";
import { type KernelExit, type KernelOptions, KernelProcess } from "./kernel-process.ts";
import { KernelLink, type Sockets } from "./link.ts";
import { MessageCodec } from "./message.ts";
import { ZmtpSocket } from "./zmtp.ts";

/** Ports may be taken by another program between choosing and using them. */
const STARTS = 5;

/** How long a kernel may take until it listens; on a busy machine far more than the usual 0.2 s. */
const START_SECONDS = 30;

/**
 * Starts a kernel and opens its sockets, broadcasts first.
 *
 * @param options folder, memory limit and signal to stop by
 * @returns a kernel that has answered
 * @throws Error when it ends before it listens, with what it said
 */
export async function openLink(options: KernelOptions): Promise<KernelLink> {
  for (let start = 1;; start++) {
    const folder = await Deno.makeTempDir({ prefix: "lakeproof-kernel-" });
    await markFolder(folder);
    await endAbandonedKernels(folder);
    const broker = startBroker(folder);
    try {
      const opened = await tryOpen(folder, { ...options, brokerPath: broker?.path ?? null });
      if (!("exit" in opened)) {
        const link = new KernelLink({ ...opened, broker, folder });
        const exit = await link.subscribed(START_SECONDS);
        if (exit === null) return link;
        await link.close();
        throw new Error(failedStart(exit));
      }
      if (start === STARTS || !/AddrInUse|address.*in use/i.test(opened.exit.said)) {
        throw new Error(failedStart(opened.exit));
      }
      broker?.close();
      await Deno.remove(folder, { recursive: true }).catch(() => {});
    } catch (error) {
      broker?.close();
      await Deno.remove(folder, { recursive: true }).catch(() => {});
      throw error;
    }
  }
}

async function tryOpen(folder: string, options: KernelOptions) {
  const connection = freeConnection();
  const process = await KernelProcess.spawn(connection, folder, options);
  const sockets = await connectAll(connection, process);
  if ("exit" in sockets) return sockets;
  return { process, sockets, codec: await MessageCodec.create(connection.key) };
}

function failedStart(exit: KernelExit): string {
  return `Cannot start the Deno kernel: it ended with code ${exit.code}. ${exit.said}`.trim();
}

/** All sockets, or how the process ended before it listened. */
async function connectAll(
  connection: Connection,
  process: KernelProcess,
): Promise<Sockets | { readonly exit: KernelExit }> {
  let exit: KernelExit | null = null;
  process.exit.then((how) => exit = how);
  const deadline = performance.now() + START_SECONDS * 1000;
  const open: ZmtpSocket[] = [];
  const connect = async (port: number, type: "DEALER" | "SUB"): Promise<ZmtpSocket | null> => {
    while (exit === null) {
      try {
        const socket = await ZmtpSocket.connect(port, type);
        open.push(socket);
        return socket;
      } catch (error) {
        if (performance.now() > deadline) {
          process.kill();
          throw new Error(
            `Cannot start the Deno kernel: it does not listen after ${START_SECONDS} s`,
            { cause: error },
          );
        }
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
    }
    return null;
  };
  const iopub = await connect(connection.iopub_port, "SUB");
  const shell = await connect(connection.shell_port, "DEALER");
  const control = await connect(connection.control_port, "DEALER");
  if (iopub !== null && shell !== null && control !== null) return { iopub, shell, control };
  open.forEach((socket) => socket.close());
  return { exit: await process.exit };
}
