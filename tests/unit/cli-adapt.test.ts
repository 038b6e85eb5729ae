import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

// The source, as it stands: a build left over from before would not know the command.
const root = fileURLToPath(new URL("../..", import.meta.url));
const main = join(root, "src", "cli", "main.ts");
const RECIPE = `# Braised kale

Serves 4

## Ingredients

- 500 g kale, chopped
- 2 cloves garlic
- 1 tbsp butter

## Method

1. Melt the butter with the garlic.
2. Add the kale and braise for 15 minutes.
`;
function run(...args: readonly string[]): { code: number | null; out: string; err: string } {
  const done = spawnSync(process.execPath, ["--import", "tsx", main, "adapt", "-", ...args], {
    cwd: root,
    input: RECIPE,
    encoding: "utf8",
    timeout: 60_000,
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

describe("adapt", () => {
  it("rewrites the recipe and ends with 0", () => {
    const ran = run("--avoid", "milk", "--serves", "2");
    expect(ran).toMatchObject({ code: 0, err: "" });
    expect(ran.out).toMatch(/^Braised kale\n=+\nServes 2\./);
    expect(ran.out.split("Changes")[0]).not.toContain("butter");
  });
  it("finds a line by words, says loudly what nothing stands in for and ends with 1", () => {
    const ran = run("--missing", "kale", "--have", "sugar", "--only-from-have", "--format", "markdown");
    expect(ran.code).toBe(1);
    expect(ran.out).toContain('- NOT REPLACED: "500 g kale, chopped"');
  });
  it("gives data with --json, without the source", () => {
    const ran = run("--serves", "8", "--json");
    const data = JSON.parse(ran.out) as { serves: number; lines: { text: string }[]; source?: unknown; notice: string };
    expect(data.serves).toBe(8);
    expect(data.lines[0]?.text).toBe("1 kg kale, chopped");
    expect(data.source).toBeUndefined();
    expect(data.notice).toMatch(/label/);
  });
  it("says what it cannot use, with 2", () => {
    expect(run("--missing", "lemons")).toMatchObject({
      code: 2,
      err: expect.stringMatching(/No line.*500 g kale/) as string,
    });
    expect(run().err).toMatch(/Say what changes/);
  });
});
