import { describe, expect, it } from "vitest";
import { endAbandonedKernels, markFolder } from "lakeproof/publish/kernel/abandoned.ts";
import { freeConnection } from "lakeproof/publish/kernel/connection.ts";
import { KernelProcess } from "lakeproof/publish/kernel/kernel-process.ts";
import { ZmtpSocket } from "lakeproof/publish/kernel/zmtp.ts";
import { ROOT } from "../publish/notebooks-of-cells.ts";

describe("kernels whose publisher was killed while it started them", () => {
  it("end at the next start, together with their folder; those of living publishers stay", async () => {
    const parent = await Deno.makeTempDir();
    const [own, dead, living] = ["own", "dead", "living"].map((name) =>
      `${parent}/lakeproof-kernel-${name}`
    ) as [string, string, string];
    for (const folder of [own, dead, living]) {
      await Deno.mkdir(folder);
      await markFolder(folder);
    }
    // A process that has certainly ended.
    const gone = new Deno.Command(Deno.execPath(), { args: ["--version"], stdout: "null" }).spawn();
    await gone.status;
    await Deno.writeTextFile(`${dead}/publisher`, String(gone.pid));
    const connection = freeConnection();
    const kernel = await KernelProcess.spawn(connection, dead, { cwd: ROOT });
    for (let tries = 0;; tries++) {
      const socket = await ZmtpSocket.connect(connection.hb_port, "DEALER").catch(() => null);
      socket?.close();
      if (socket !== null || tries > 500) break;
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    await endAbandonedKernels(own);
    expect(await kernel.exit).toMatchObject({ code: 0 });
    expect(Array.from(Deno.readDirSync(parent), (entry) => entry.name).sort()).toEqual([
      "lakeproof-kernel-living",
      "lakeproof-kernel-own",
    ]);
    await Deno.remove(parent, { recursive: true });
  });
});
