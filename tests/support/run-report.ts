/** Starts `task report` in a small project as a process group of its own, so that it can be killed with all it started. */
import { spawn } from "node:child_process";
import process from "node:process";

/** How a report ended. */
export interface ReportEnd {
  readonly code: number | null;
  readonly output: string;
}

/** A running report. */
export interface RunningReport {
  readonly ended: Promise<ReportEnd>;
  /** Sends a signal to the report alone. */
  signal(name: "SIGTERM" | "SIGINT"): void;
  /** Ends the report and everything that it started, at once. */
  kill(): void;
  /** Whether any process that it started is still there after five seconds. */
  anyLeft(): Promise<boolean>;
}

/** Starts it. */
export function startReport(root: string, args: readonly string[] = []): RunningReport {
  const child = spawn(Deno.execPath(), ["run", "-A", "lib/tasks/report.ts", ...args], {
    cwd: root,
    detached: true,
    stdio: ["ignore", "pipe", "pipe"],
    env: { ...process.env, NO_COLOR: "1" },
  });
  const group = -child.pid!;
  let output = "";
  child.stdout!.on("data", (chunk) => output += chunk);
  child.stderr!.on("data", (chunk) => output += chunk);
  const toGroup = (signal: "SIGKILL" | 0): boolean => {
    try {
      process.kill(group, signal);
      return true;
    } catch {
      return false;
    }
  };
  return {
    ended: new Promise((resolve) => child.on("close", (code) => resolve({ code, output }))),
    // By number: `child.kill` makes this runtime report the signal in place of the exit code.
    signal: (name) => Deno.kill(child.pid!, name),
    kill: () => void toGroup("SIGKILL"),
    async anyLeft() {
      // The system needs a moment to clear away a process that was ended.
      for (let look = 0; look < 50 && toGroup(0); look++) {
        await new Promise((done) => setTimeout(done, 100));
      }
      return toGroup(0);
    },
  };
}

/** Runs it to its end. */
export function runReport(root: string, args: readonly string[] = []): Promise<ReportEnd> {
  return startReport(root, args).ended;
}
