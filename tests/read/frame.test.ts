import pl from "nodejs-polars";
import { describe, expect, it } from "vitest";
import { framesOf } from "lakeproof/read/frame.ts";
import { openSession } from "lakeproof/read/open-session.ts";

const session = await openSession("quillwater-evening");
const { designs, glides, tow } = framesOf(session);

describe("a session as frames", () => {
  it("holds every row and every column of the contract, in SI", () => {
    expect(glides.height).toBe(session.glides.length);
    expect(glides.columns.slice(0, 5)).toEqual(["row", "run", "date", "block", "design"]);
    expect(glides.getColumn("launch_speed").toArray())
      .toEqual(session.glides.map((one) => one.launchSpeed));
    // 2.4 l of the file.
    expect(designs.getColumn("wet_volume").get(0)).toBe(0.0024);
    expect(tow.height).toBe(session.tow.length);
    expect(tow.columns).toContain("line_tension");
  });

  it("says null for what was not measured, never NaN, and keeps the type of an empty column", () => {
    expect(glides.getColumn("leave_out").nullCount()).toBe(
      session.glides.filter((one) => one.leaveOut === null).length,
    );
    const bare = framesOf({
      ...session,
      glides: session.glides.map((one) => ({ ...one, drop: null, duration: NaN })),
    }).glides;
    for (const name of ["drop", "duration"]) {
      expect(bare.getColumn(name).nullCount()).toBe(session.glides.length);
      expect(String(bare.getColumn(name).dtype)).toBe("DataType(Float64)");
    }
    expect(framesOf({ ...session, glides: [] }).glides.columns).toEqual(glides.columns);
  });

  it("groups to the means that plain arithmetic gives", () => {
    const means = glides.groupBy("design").agg(pl.col("distance").mean().alias("mean"))
      .sort("design").toRecords();
    const plain = [...new Set(session.glides.map((one) => one.design))].sort().map((design) => {
      const distances = session.glides.filter((one) => one.design === design)
        .map((one) => one.distance!);
      return { design, mean: distances.reduce((sum, one) => sum + one, 0) / distances.length };
    });
    expect(means.map((one) => one["design"])).toEqual(plain.map((one) => one.design));
    for (const [at, one] of plain.entries()) {
      // The order of summing may differ: a few units in the last place.
      expect(means[at]!["mean"]).toBeCloseTo(one.mean, 12);
    }
  });
});
