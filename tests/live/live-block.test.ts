import { parseHTML } from "linkedom";
import { describe, expect, it } from "vitest";
import { mountLiveBlock } from "lakeproof/live/live-block.ts";
import type { PageDocument, PageElement } from "lakeproof/live/page-element.ts";
import { livePart } from "lakeproof/publish/page/live-part.ts";
import { PageState } from "lakeproof/publish/page/page-state.ts";
import { liveTakeoff } from "lakeproof/show/live-record.ts";
import { liveStates } from "lakeproof/show/live-state.ts";
import { LIVE_TASK } from "../pages/live-notebook.ts";

const still = livePart(liveTakeoff(LIVE_TASK), new PageState("01-live"));

interface Told {
  readonly values: unknown;
  readonly states: unknown;
}

/** A page with one figure, and a browser whose moments pass at once. */
function page(html = still) {
  const { document, Event } = parseHTML(`<!doctype html><html><body>${html}</body></html>`) as {
    readonly document: PageDocument;
    readonly Event: new (kind: string) => unknown;
  };
  const [block] = document.querySelectorAll("section.live");
  const told: Told[] = [];
  const moments = {
    now: () => 0,
    nextFrame: (then: () => void) => then(),
    whenQuiet: (then: () => void) => then(),
    tell: (_: PageElement, detail: unknown) => told.push(detail as Told),
  };
  const move = (name: string, value: string) => {
    const input = block!.querySelector(`input[name="${name}"]`)!;
    input.value = value;
    input.dispatchEvent(new Event("input"));
  };
  const reset = () => block!.querySelector("button")!.dispatchEvent(new Event("click"));
  return { block: block!, moments, told, move, reset };
}

describe("a live figure", () => {
  it("puts labelled native sliders between drawing and caption", () => {
    const { block, moments } = page();
    expect(block.querySelector("input")).toBeNull();
    mountLiveBlock(block, moments);
    const inputs = [...block.querySelectorAll("input")];
    expect(inputs.map((one) => one.getAttribute("type"))).toEqual(Array(6).fill("range"));
    for (const input of inputs) {
      const label = block.querySelector(`label[for="${input.getAttribute("id")}"]`);
      expect(label?.textContent).not.toBe("");
    }
    expect(inputs[0]!.getAttribute("aria-valuetext")).toBe("88 kilograms");
    expect(block.querySelectorAll("[aria-live=polite]")).toHaveLength(1);
    expect(block.querySelector("div.summary")!.textContent).toMatch(/^As published\./);
  });

  it("draws and says what the library computes for what was moved", () => {
    const { block, moments, told, move } = page();
    mountLiveBlock(block, moments);
    move("mass", "101");
    move("area-1", "0.1325");
    expect(told).toHaveLength(2);
    const values = { mass: 101, "area-1": 0.1325 };
    expect(told[1]).toEqual({
      values,
      states: liveStates(LIVE_TASK, values),
      milliseconds: 0,
    });
    expect(block.querySelector("div.summary")!.textContent).toContain(
      "Load, all that flies 101\u00a0kg instead of 88\u00a0kg; Area of birch 0.1325\u00a0m²",
    );
    for (const part of ["wide", "narrow"]) {
      // Dotted as published, and two curves a panel as moved.
      expect(block.querySelectorAll(`.${part} path[stroke-dasharray="1.5 4"]`)).toHaveLength(4);
      expect(block.querySelectorAll(`.${part} path[stroke-width="2.25"]`)).toHaveLength(4);
    }
  });

  it("goes back to the published setting, to the last bit", () => {
    const { block, moments, told, move, reset } = page();
    mountLiveBlock(block, moments);
    move("temperature", "20.5");
    move("runningDepth", "0.3");
    reset();
    expect(told.at(-1)).toMatchObject({ values: {}, states: liveStates(LIVE_TASK) });
    expect(block.querySelectorAll(`path[stroke-dasharray="1.5 4"]`)).toHaveLength(0);
    expect(block.querySelector("div.summary")!.textContent).toMatch(/^As published\./);
  });

  it("says in a line that nothing lifts a design, and draws the others", () => {
    const heavy = liveTakeoff({
      designs: [
        { ...LIVE_TASK.designs[0]!, craft: { ...LIVE_TASK.designs[0]!.craft, wingVolume: 0.05 } },
        LIVE_TASK.designs[1]!,
      ],
    });
    const { block, moments, move } = page(livePart(heavy, new PageState("01-live")));
    mountLiveBlock(block, moments);
    move("mass", "46");
    expect(block.querySelector("div.summary")!.textContent).toContain(
      "Alder: nothing lifts it here, as the water alone carries the whole load, so it floats.",
    );
    expect(block.querySelectorAll(`.wide path[stroke-width="2.25"]`)).toHaveLength(2);
  });

  it("leaves the page as it was where the data are not what the library needs", () => {
    for (const data of ["", "{", "{}", `{"task":{"designs":[{}]},"controls":[],"legend":""}`]) {
      const html = still.replace(/(<script[^>]*>)[\s\S]*?(<\/script>)/, `$1${data}$2`);
      const { block, moments } = page(html);
      const before = block.innerHTML;
      expect(() => mountLiveBlock(block, moments)).toThrow();
      expect(block.innerHTML).toBe(before);
    }
  });
});
