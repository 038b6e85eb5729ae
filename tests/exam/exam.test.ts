import { examine } from "./examine.js";

examine("the examination", "questions.yaml", 60, [
  ["jp-panko", ["amount"], "a crumb coat is measured by volume, so fine crumbs come out half as heavy again"],
]);
