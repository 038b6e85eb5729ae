import {readFileSync,writeFileSync} from "node:fs"; import {openCatalogue} from "./src/index.js"; import {storeOf} from "./src/catalogue/index.js"; const s=storeOf(openCatalogue());
const near=(id:string)=>[...s.byId.keys()].filter(k=>k.split("/")[0]===id.split("/")[0]).join(" ")||"NO FOOD";
let out="";
for(const l of readFileSync("/work/brief/makeup.d/parts.txt","utf8").split("\n")){ if(l.startsWith("#")){out+=l+"\n";continue;} if(!l.trim())continue;
 const [id,rest]=[l.slice(0,l.indexOf(":")),l.slice(l.indexOf(":")+1)]; const parts=rest.split(",").map(p=>p.trim().split(" ") as [string,string]).map(([k,v])=>[k,+v] as [string,number]).filter(([,v])=>v>0);
 let bad=false; for(const k of [id,...parts.map(p=>p[0])]) if(!s.byId.has(k)){console.log(id,"?",k,"->",near(k));bad=true;} if(bad)continue;
 const t=parts.reduce((a,[,v])=>a+v,0); const sh=parts.map(([k,v])=>[k,Math.round(v/t*1000)/1000] as [string,number]); const d=1-sh.reduce((a,[,v])=>a+v,0); const big=sh.reduce((m,x)=>x[1]>m[1]?x:m); big[1]=Math.round((big[1]+d)*1000)/1000;
 out+=`${id}: { ${sh.map(([k,v])=>`${k}: ${v}`).join(", ")} }\n`;}
writeFileSync("data/vocabulary/makeup.yaml",out);
