// Works out the figures of one plan in a general spreadsheet engine and in our
// own, under the same Node: node compare.js GLUE ENGINE, with {"plan": text,
// "sheet": sheet} on standard input. It first holds every figure of the
// spreadsheet to the sheet's, so that the race is over the same numbers, and
// then prints {"figures", "built", "changed", "ours"}: their count, and ms to
// set the spreadsheet up from the plan and read all figures, to change one
// side of the room in a spreadsheet already set up, and for our whole plan.
//
// The spreadsheet gets the easier half: its lengths are read already, and it
// gives no drawing, no hanging order, no safety notes and no workings.
"use strict";
const fs = require("fs");
const { HyperFormula } = require("hyperformula");

const FT2 = 0.3048 ** 2;
const LITRES = { gal: 3.785411784, qt: 0.946352946, pt: 0.473176473, floz: 0.0295735295625, L: 1, mL: 0.001 };

/** Lays the plan out in one column of formulas; place tells where each is. */
function layOut(plan, readings) {
  const column = [];
  const place = new Map();
  const put = (id, content) => {
    column.push([content]);
    place.set(id, "A" + column.length);
    return "A" + column.length;
  };
  const metres = (at) => Number(BigInt(readings.get(at) ?? 0n)) / 1e9;
  const L = put("in.L", metres("/room/length")), W = put("in.W", metres("/room/width")), H = put("in.H", metres("/room/height"));
  const mL = put("in.mL", metres("/mask/length")), mW = put("in.mW", metres("/mask/width"));
  put("room.area", `=${L}*${W}`);
  put("room.perimeter", `=2*(${L}+${W})`);
  put("room.volume", `=${L}*${W}*${H}`);
  put("mask.area", `=${mL}*${mW}`);
  const ends = put("border.DA", `=(${L}-${mL})/2`), sides = put("border.AB", `=(${W}-${mW})/2`);
  put("border.BC", `=(${L}-${mL})/2`);
  put("border.CD", `=(${W}-${mW})/2`);
  put("box.diagonal", `=SQRT(${mL}^2+${mW}^2)`);

  const seams = [], crossings = [], openings = new Map();
  plan.mask.layers.forEach((layer, i) => {
    const at = `/mask/layers/${i}`, id = layer.id;
    const c = put(id + ".c", Number(layer.columns)), r = put(id + ".r", Number(layer.rows));
    const gap = put(id + ".gap", metres(at + "/gap")), off = put(id + ".off", metres(at + "/panelTolerance"));
    put(id + ".panels", `=${c}*${r}`);
    seams.push(put(id + ".seams.length", `=(${c}-1)*${mW}+(${r}-1)*${mL}`));
    crossings.push(put(id + ".seams.crossings", `=(${c}-1)*(${r}-1)`));
    for (const [axis, count, whole, border, walls] of [["length", c, mL, ends, ["AB", "CD"]], ["width", r, mW, sides, ["BC", "DA"]]]) {
      const panel = put(`${id}.panel.${axis}`, `=(${whole}-(${count}-1)*${gap})/${count}`);
      put(`${id}.runout.${axis}`, `=ROUND(${count}*${panel}+(${count}-1)*${gap}-${whole},9)`);
      put(`${id}.worst.${axis}`, `=${count}*${off}`);
      put(`${id}.likely.${axis}`, `=SQRT(${count})*${off}`);
      for (const wall of walls) {
        for (let k = 1; k < Number(axis === "length" ? layer.columns : layer.rows); k++) {
          const mark = put(`${wall}.${id}.${k}`, `=${border}+${k}*(${panel}+${gap})-${gap}/2`);
          const ticks = put(`${wall}.${id}.${k}.ticks`, `=ROUND(${mark}/0.0254*16,0)`);
          put(`${wall}.${id}.${k}.text`, `=INT(${ticks}/192)&"' "&INT(MOD(${ticks},192)/16)&" "&MOD(${ticks},16)&"/16"`);
          put(`${wall}.${id}.${k}.hides`, `=${mark}-${ticks}*0.0254/16`);
        }
      }
    }
    openings.set(id, put(id + ".open", `=${mL}*${mW}*${Number(layer.open)}/100`));
  });
  const tape = put("seams.length", "=" + seams.join("+"));
  put("seams.crossings", "=" + crossings.join("+"));
  put("tape.length", "=" + tape);
  put("tape.rolls", `=ROUNDUP(${tape}*(1+${Number(plan.seams.waste)}/100)/${metres("/seams/rollLength")},0)`);

  plan.finish.steps.forEach((step, i) => {
    const id = "step." + step.id, at = `/finish/steps/${i}`;
    const area = put(id + ".area", areaOf(step, place, openings, metres, at));
    if (step.leaf) {
      const side = (name) => metres(`${at}/leaf/${name}`);
      const leaf = step.leaf;
      const one = put(id + ".one", `=(${side("length")}-${side("lap")})*(${side("width")}-${side("lap")})`);
      const leaves = put(id + ".leaves", `=ROUNDUP(${area}*${Number(leaf.cover)}/100*(1+${Number(leaf.waste)}/100)/${one},0)`);
      put(id + ".books", `=ROUNDUP(${leaves}/${Number(leaf.perBook)},0)`);
    }
    if (!step.coats || step.kind === "leaf" || step.kind === "peel") return;
    const film = step.by === "wet" ? put(id + ".film", Number(step.film) * 25.4e-6) : put(id + ".film", `=${LITRES.gal}/1000/(${Number(step.spread)}*${FT2})`);
    put(id + ".wet", `=${film}*1000000`);
    const product = put(id + ".product", `=${area}*${Number(step.coats)}*${film}*1000/(1-${Number(step.loss)}/100)`);
    cheapest(put, id, product, step.cans);
  });
  return { column, place };
}

function areaOf(step, place, openings, metres, at) {
  switch (step.area) {
    case "surface": return "=" + place.get("room.area");
    case "mask": return "=" + place.get("mask.area");
    case "border": return `=${place.get("room.area")}-${place.get("mask.area")}`;
    case "openings": return `=${openings.get(step.layer)}*${Number(step.share)}/100`;
    case "edges": return `=${metres(at + "/edgeLength")}*${metres(at + "/brushWidth")}`;
  }
  throw new Error("no formula for area " + step.area);
}

/** The cheapest cans: for each number of the larger can the price with as many
 *  of the smaller as are wanting, and the least of these. */
function cheapest(put, id, product, cans) {
  const [big, small] = cans.map((c) => ({ litres: Number(c.size) * LITRES[c.unit], price: Number(c.price) }));
  if (!big) return;
  if (!small) {
    put(id + ".cans", `=ROUNDUP(${product}/${big.litres},0)`);
    return;
  }
  const prices = [], counts = [];
  for (let n = 0; n <= 12; n++) {
    const rest = put(`${id}.rest.${n}`, `=ROUNDUP(MAX(0,${product}-${n * big.litres})/${small.litres},0)`);
    prices.push(put(`${id}.price.${n}`, `=${n * big.price}+${rest}*${small.price}`));
    counts.push(put(`${id}.count.${n}`, `=${n}+${rest}`));
  }
  const least = put(id + ".price", `=MIN(${prices.join(",")})`);
  put(id + ".cans", "=" + prices.reduceRight((other, p, n) => `IF(${p}=${least},${counts[n]},${other})`, "0"));
}

/** Every figure that both have must be the same. */
function hold(figures, sheet, units) {
  let held = 0;
  for (const f of sheet.figures) {
    if (!figures.has(f.id)) continue;
    const want = Number(f.value) / (f.unit === "nm" ? 1e9 : 1);
    const got = figures.get(f.id);
    // 1 nm for lengths, which the sheet gives whole; else nine places.
    const allowed = f.unit === "nm" ? 1e-9 : 1e-9 * Math.max(1, Math.abs(want));
    if (!(Math.abs(got - want) <= allowed)) throw new Error(`${f.id}: the spreadsheet has ${got}, the sheet ${want}`);
    held++;
  }
  if (held < 50) throw new Error(`only ${held} figures could be compared`);
  return held;
}

const median = (a) => a.sort((x, y) => x - y)[a.length >> 1];

function times(n, work) {
  const all = [];
  for (let i = 0; i < n; i++) {
    const from = performance.now();
    work(i);
    all.push(performance.now() - from);
  }
  return median(all);
}

async function ourEngine() {
  require(process.argv[2]);
  const go = new Go();
  const { instance } = await WebAssembly.instantiate(fs.readFileSync(process.argv[3]), go.importObject);
  go.run(instance);
  return globalThis.ceilingwright;
}

(async () => {
  const { plan: text, sheet } = JSON.parse(fs.readFileSync(0, "utf8"));
  const plan = JSON.parse(text);
  const readings = new Map(sheet.readings.map((r) => [r.at, r.nanometres]));
  const options = { licenseKey: "gpl-v3" };
  const build = () => {
    const { column, place } = layOut(plan, readings);
    return { book: HyperFormula.buildFromArray(column, options), place };
  };
  const read = ({ book, place }) => {
    const values = book.getSheetValues(0);
    return new Map([...place].map(([id, cell]) => [id, values[Number(cell.slice(1)) - 1][0]]));
  };
  const first = build();
  const figures = hold(read(first), sheet);
  const built = times(15, () => read(build()));
  const length = read(first).get("in.L");
  const changed = times(60, (i) => {
    first.book.setCellContents({ sheet: 0, row: 0, col: 0 }, length + (i % 2) / 1000);
    read(first);
  });
  const engine = await ourEngine();
  times(200, () => engine.compute(text));
  const ours = times(200, () => engine.compute(text));
  fs.writeFileSync(1, JSON.stringify({ figures, built, changed, ours }));
  process.exit(0);
})().catch((e) => {
  console.error(e);
  process.exit(1);
});
