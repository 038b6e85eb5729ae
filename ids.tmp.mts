import {openCatalogue} from "./src/index.js"; import {storeOf} from "./src/catalogue/index.js"; const s=storeOf(openCatalogue());
const by:any={}; for(const i of s.ingredients){const f=i.id.split("/")[0]; (by[f]??=[]).push(i.id.split("/")[1]);}
const want=(process.argv[2]??"").split(" "); for(const w of want) console.log(w, by[w]?.join(" ")??"-");
