import tseslint from "typescript-eslint";

// One direction of imports: a room may import rooms above it in this list, never below.
const ROOMS = [
  "quantity",
  "catalogue",
  "names",
  "portion",
  "states",
  "dose",
  "likeness",
  "safety",
  "facts",
  "swap",
  "pairing",
  "recipe",
  "adapt",
  "meal",
  "timetable",
  "notes",
  "pictures",
  "cli",
];
const oneWay = ROOMS.map((room, i) => ({
  files: [`src/${room}/**/*.ts`],
  rules: {
    "no-restricted-imports": [
      "error",
      {
        patterns: [
          ...(i + 1 < ROOMS.length
            ? [
                {
                  group: ROOMS.slice(i + 1).flatMap((later) => [
                    `../${later}/**`,
                    `../../${later}/**`,
                    `../../../${later}/**`,
                  ]),
                  message: `The room ${room} may only import rooms that come before it.`,
                },
              ]
            : []),
          ...(room === "cli"
            ? []
            : [
                { group: ["node:*", "fs", "path"], message: "Only the command line does input and output." },
                { regex: "^(\\.\\./)+index\\.js$", message: "Import the room, not the public face." },
              ]),
          ...(room === "catalogue"
            ? []
            : [
                { group: ["zod", "zod/*"], message: "zod lives in src/catalogue/authoring and src/extend.ts." },
                { group: ["graphology"], message: "graphology lives in src/catalogue/graph and src/graph.ts." },
              ]),
        ],
      },
    ],
  },
}));

export default tseslint.config(
  { ignores: ["dist/**", "coverage/**", "node_modules/**", "**/*.generated.ts", "docs/**"] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: {
      parserOptions: { project: ["./tsconfig.json"], tsconfigRootDir: new URL("..", import.meta.url).pathname },
    },
    rules: {
      "@typescript-eslint/no-unused-vars": [
        "error",
        { argsIgnorePattern: "^_", varsIgnorePattern: "^_", ignoreRestSiblings: true },
      ],
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/switch-exhaustiveness-check": "error",
      "no-restricted-syntax": [
        "error",
        {
          selector: "ImportDeclaration[source.value='zod'] > ImportSpecifier",
          message: 'Import zod as `import * as z from "zod"`: the named form ships every locale.',
        },
      ],
      eqeqeq: "error",
    },
  },
  ...oneWay,
  { files: ["**/*.js"], ...tseslint.configs.disableTypeChecked },
);
