import { describe, expect, it } from "vitest";
import { refusal } from "lakeproof/publish/kernel/broker.ts";

describe("the broker of a locked kernel", () => {
  it("lets a notebook read, and look at the environment and the machine", () => {
    expect(refusal({ permission: "read", value: "/lake/glides.csv" })).toBeNull();
    expect(refusal({ permission: "env", value: "HOME" })).toBeNull();
    expect(refusal({ permission: "sys", value: "cpus" })).toBeNull();
  });

  it.each(["write", "net", "run", "import", "anything-new"])("refuses %s", (permission) => {
    for (const value of ["/tmp/x", "../x", "", null]) {
      expect(refusal({ permission, value })).toMatch(/^This notebook (?:tried to|asked for) /);
    }
  });

  it("lets only installed packages bring native code", () => {
    const ffi = (value: string | null) => refusal({ permission: "ffi", value });
    expect(ffi("/lake/node_modules/.deno/a@1/node_modules/a/a.linux-x64-gnu.node")).toBeNull();
    expect(ffi("/usr/lib/libc.so.6")).not.toBeNull();
    expect(ffi("/lake/node_modules/../evil.node")).not.toBeNull();
    expect(ffi(null)).not.toBeNull();
  });
});
