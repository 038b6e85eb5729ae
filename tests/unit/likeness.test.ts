import { describe, expect, it } from "vitest";
import { openCatalogue, storeOf, type Ingredient } from "../../src/catalogue/index.js";
import {
  aromaLikeness,
  customLikeness,
  formLikeness,
  kinLikeness,
  textureLikeness,
  useLikeness,
} from "../../src/likeness/index.js";

const store = storeOf(openCatalogue());
const food = (id: string): Ingredient => {
  const i = store.byId.get(id);
  if (!i) throw new Error(`${id} is not in the catalogue`);
  return i;
};

describe("aroma", () => {
  const plain = store.ingredients.find((i) => Object.keys(i.aroma).length === 0);
  it("a thing smells like itself", () => {
    for (const i of store.ingredients) expect(aromaLikeness(store, i, i), i.id).toBe(1);
  });
  it("two things without any smell are alike", () => {
    expect(plain).toBeDefined();
    if (plain) expect(aromaLikeness(store, plain, plain)).toBe(1);
  });
  it("gaining a note costs more than losing it: smoke into plain paprika is worse than out of it", () => {
    const sweet = food("paprika/dried-ground");
    const smoked = food("smoked-paprika/dried-smoked-ground");
    expect(aromaLikeness(store, smoked, sweet)).toBeGreaterThan(aromaLikeness(store, sweet, smoked));
  });
  it("levels say how strong each is as it is used: garlic powder keeps most of garlic", () => {
    expect(aromaLikeness(store, food("garlic/fresh"), food("garlic/dried-powder"))).toBeGreaterThan(0.6);
  });
  it("thyme is nearer to oregano than to cinnamon (common practice, no source)", () => {
    const thyme = food("thyme/dried");
    expect(aromaLikeness(store, thyme, food("oregano/dried"))).toBeGreaterThan(
      aromaLikeness(store, thyme, food("cinnamon/dried-ground")),
    );
  });
});

describe("texture", () => {
  it("nothing judged on either side is no answer, not a zero", () => {
    const bare = store.ingredients.find((i) => Object.keys(i.texture).length === 0);
    expect(bare).toBeDefined();
    if (bare) expect(textureLikeness(store, bare, bare, "cooked")).toBeUndefined();
  });
  it("raw carrot is nearer to raw kohlrabi than to ripe banana (common practice, no source)", () => {
    const carrot = food("carrot/fresh");
    const near = textureLikeness(store, carrot, food("kohlrabi/fresh"), "raw") ?? Number.NaN;
    const far = textureLikeness(store, carrot, food("banana/fresh"), "raw") ?? Number.NaN;
    expect(near).toBeGreaterThan(far);
  });
});

describe("kin", () => {
  it("itself 1, another state 0.95, another of its kind 0.9, then less", () => {
    const cod = food("cod/fresh");
    expect(kinLikeness(cod, cod)).toBe(1);
    expect(kinLikeness(cod, food("cod/frozen"))).toBe(0.95);
    expect(kinLikeness(cod, food("haddock/fresh"))).toBe(0.9);
    expect(kinLikeness(cod, food("salmon/fresh"))).toBeLessThan(0.9);
    expect(kinLikeness(cod, food("salmon/fresh"))).toBeGreaterThan(kinLikeness(cod, food("ground-beef/fresh")));
  });
  it("a leaf is not the stem it grew on", () => {
    expect(kinLikeness(food("chard.leaf/fresh"), food("chard.stem/fresh"))).toBeLessThan(0.95);
  });
  it("what is made of the same is kin across kinds", () => {
    expect(kinLikeness(food("soy-sauce/pantry"), food("miso/pantry-paste"))).toBeGreaterThan(
      kinLikeness(food("soy-sauce/pantry"), food("fish-sauce/pantry")) - 0.2,
    );
    expect(kinLikeness(food("butter/fresh-unsalted"), food("buttermilk/fresh"))).toBeGreaterThan(0);
  });
});

describe("custom", () => {
  const listed = store.ingredients.find((i) => i.traditions.length > 1);
  const none = store.ingredients.find((i) => i.traditions.length === 0);
  it("nothing listed is half, all shared is 1", () => {
    expect(listed && none).toBeDefined();
    if (!listed || !none) return;
    expect(customLikeness(listed, none)).toBe(0.5);
    expect(customLikeness(none, listed)).toBe(0.5);
    expect(customLikeness(listed, listed)).toBe(1);
  });
  it("when the dish has a cuisine, only that counts", () => {
    if (!listed || !none) return;
    const own = listed.traditions[0] ?? "";
    expect(customLikeness(none, listed, [own])).toBe(1);
    expect(customLikeness(listed, listed, ["no such tradition"])).toBe(0.25);
    expect(customLikeness(listed, none, [own])).toBe(0.5);
  });
});

describe("use and form", () => {
  it("are 1 for a thing and itself, the same both ways, and between 0 and 1", () => {
    const some = store.ingredients.filter((_, k) => k % 40 === 0);
    for (const a of some) {
      if (a.roles.length > 0) expect(useLikeness(a, a), a.id).toBeCloseTo(1, 12);
      expect(formLikeness(store, a, a), a.id).toBe(1);
      for (const b of some) {
        const [use, form] = [useLikeness(a, b), formLikeness(store, a, b)];
        expect(use, `${a.id} ${b.id}`).toBeCloseTo(useLikeness(b, a), 12);
        expect(form).toBe(formLikeness(store, b, a));
        expect(use >= 0 && use <= 1 + 1e-12 && form >= 0 && form <= 1).toBe(true);
      }
    }
  });
  it("a fat is bought for what a fat is bought for, and not for what a vinegar is (common practice, no source)", () => {
    const butter = food("butter/fresh-unsalted");
    expect(useLikeness(butter, food("lard/pantry"))).toBeGreaterThan(0.7);
    expect(useLikeness(butter, food("white-vinegar/pantry"))).toBeLessThan(0.2);
  });
  it("a powder comes in another form than a clove, a leaf in another than a leaf's stem", () => {
    const garlic = food("garlic/fresh");
    expect(formLikeness(store, garlic, food("onion/fresh"))).toBeGreaterThan(
      formLikeness(store, garlic, food("garlic/dried-powder")),
    );
    expect(formLikeness(store, food("parsley/fresh"), food("parsley.stem/fresh"))).toBeLessThan(1);
  });
});
