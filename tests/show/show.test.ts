import { afterEach, describe, expect, it, vi } from "vitest";
import { MEDIA } from "lakeproof/base/records.ts";
import { figureRatios } from "lakeproof/show/figure-ratios.ts";
import { show } from "lakeproof/show/show.ts";
import { verdictRecord } from "lakeproof/show/verdict-record.ts";
import { inventedEvidence } from "../support/invented-evidence.ts";

const evidence = inventedEvidence();

/** Lets a test stand in for the kernel. */
function withKernel(jupyter: unknown): void {
  vi.stubGlobal("Deno", Object.create(Deno, { jupyter: { get: () => jupyter } }));
}

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe("show", () => {
  it("hands the kernel every form of the record at once, raw", async () => {
    const display = vi.fn(() => Promise.resolve());
    withKernel({ display });
    await show(figureRatios(evidence));
    const [bundle, options] = display.mock.calls[0] as unknown as [object, object];
    expect(Object.keys(bundle)).toEqual([MEDIA.figure, "image/svg+xml", "text/plain"]);
    expect(options).toEqual({ raw: true });
  });

  it("prints plain text outside a notebook, also where asking for the kernel throws", async () => {
    const log = vi.spyOn(console, "log").mockImplementation(() => {});
    await show(verdictRecord(evidence));
    vi.stubGlobal(
      "Deno",
      Object.create(Deno, {
        jupyter: {
          get: () => {
            throw new Error("no kernel here");
          },
        },
      }),
    );
    await show(verdictRecord(evidence));
    expect(log.mock.calls.length).toBe(2);
    expect(log.mock.calls[1]).toEqual(log.mock.calls[0]);
    expect(String(log.mock.calls[0]![0])).toMatch(/^Birch glides further/);
  });
});
