// Starts an engine under Node and answers a list of calls: node engine.js
// GLUE ENGINE, with [{"call": name, "arguments": [...]}] on standard input and
// the answers on standard output. {"odd": word} among the arguments stands for
// a value that JSON has no word for.
"use strict";
const fs = require("fs");
require(process.argv[2]);
const odd = { undefined: undefined, nan: NaN, symbol: Symbol("s"), bigint: 1n, function: () => 1, throwing: { toString() { throw new Error("no") } } };
const revive = (a) => (a !== null && typeof a === "object" && "odd" in a ? odd[a.odd] : a);
(async () => {
  const go = new Go();
  const { instance } = await WebAssembly.instantiate(fs.readFileSync(process.argv[3]), go.importObject);
  go.run(instance);
  const calls = JSON.parse(fs.readFileSync(0, "utf8"));
  const answers = calls.map((c) => {
    try {
      return globalThis.ceilingwright[c.call](...c.arguments.map(revive));
    } catch (e) {
      return "threw " + e;
    }
  });
  fs.writeFileSync(1, JSON.stringify({ version: globalThis.ceilingwright.version, answers }));
  process.exit(0);
})();
