import { describe, expect, it } from "vitest";
import { fontCss } from "lakeproof/publish/page/fonts.ts";

const families = (css: string) =>
  [...css.matchAll(/font-family:"([^"]*)";font-style:(\w+);font-weight:([\d ]+);/g)]
    .map((match) => match.slice(1).join("/"));

const PLAIN = [
  "Source Sans 3/normal/200 500",
  "Source Sans 3/normal/501 900",
  "Source Sans 3/italic/200 500",
];

describe("the fonts of a page", () => {
  it("are three cuts of the text font when nothing else is needed", async () => {
    expect(families(await fontCss("<p>18 m ± 1 m – “so”</p>"))).toEqual(PLAIN);
  });

  it("take in code, formulas and other scripts only where they are used", async () => {
    expect(families(await fontCss("<pre>x</pre>"))).toContain("Source Code Pro/normal/200 900");
    expect(families(await fontCss("<math><mi>x</mi></math>"))).toEqual(
      [...PLAIN, "Lakeproof Math/normal/200 900"],
    );
    expect(families(await fontCss("<p>a → b</p>"))).toContain("Lakeproof Math/normal/200 900");
    expect(families(await fontCss("<p>μ and Σ</p>"))).toEqual([...PLAIN, ...PLAIN]);
    expect(families(await fontCss("<p>Łódź</p>"))).toEqual([...PLAIN, ...PLAIN]);
  });

  // One face at "400" beside another at "200 500" would win every match and leave the page to a system font.
  it("have one weight range for each cut, whatever the script", async () => {
    const all = families(await fontCss("<p>Łódź Σ Ж ạ</p>"));
    expect(new Set(all)).toEqual(new Set(PLAIN));
  });
});
