package core_test

import (
	"encoding/json"
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// object and list are a plan in the making.
type (
	object = map[string]any
	list   = []any
)

// manyOf is a list of n entries.
func manyOf(n int, entry func(i int) any) list {
	all := make(list, n)
	for i := range all {
		all[i] = entry(i)
	}
	return all
}

// planWith is a kept plan with some of its parts replaced.
func planWith(t testing.TB, name string, parts object) []byte {
	t.Helper()
	var tree object
	require.NoError(t, json.Unmarshal(planNamed(t, name), &tree))
	for at, part := range parts {
		node, steps := tree, strings.Split(strings.TrimPrefix(at, "/"), "/")
		for _, step := range steps[:len(steps)-1] {
			node = node[step].(object)
		}
		node[steps[len(steps)-1]] = part
	}
	text, err := json.Marshal(tree)
	require.NoError(t, err)
	return text
}

// primes are n prime numbers below a power of ten, written with so many decimals:
// sums of fractions of them share no divisor and keep all their digits.
func primes(n, decimals int) []string {
	below := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(decimals)), nil)
	var found []string
	for p := below.Sub(below, big.NewInt(1)); len(found) < n; p.Sub(p, big.NewInt(2)) {
		if p.ProbablyPrime(20) {
			found = append(found, fmt.Sprintf("0.%0*s", decimals, p))
		}
	}
	return found
}

func glazes(steps, parts int) list {
	densities := primes(parts, 12)
	mix := manyOf(parts, func(i int) any {
		return object{"name": "part " + strconv.Itoa(i), "amount": strconv.Itoa(i+1) + ".37", "unit": []string{"g", "oz"}[i%2], "density": densities[i]}
	})
	return manyOf(steps, func(i int) any {
		return object{"id": "s" + strconv.Itoa(i), "name": "Glaze " + strconv.Itoa(i), "kind": "glaze", "area": "typed", "typedArea": strconv.Itoa(i+10) + ".77", "typedUnit": "ft2",
			"coats": "2", "by": "spread", "spread": strconv.Itoa(200+i) + ".77", "spreadUnit": "ft2/gal", "loss": "10", "binder": "water",
			"cans": list{can("1", "gal", "33"), can("1", "qt", "12")}, "mix": mix, "sample": "100", "sampleUnit": "mL", "potLife": "3", "vary": "7", "spare": "13"}
	})
}

func kitOf(n int) list {
	return manyOf(n, func(i int) any {
		return object{"size": fmt.Sprintf("%d.%d", i%7+1, i), "unit": []string{"tsp", "floz", "mL", "g", "oz", "cup"}[i%6]}
	})
}

// Plans that cost too much once, each by one thing of which there is too much, or
// of a kind that grows by itself.
func hardPlans(t testing.TB) map[string][]byte {
	sizes := func(n int) list { return manyOf(n, func(int) any { return "1" }) }
	layer := func(columns, rows int) object {
		return object{"split": "count", "columns": strconv.Itoa(columns), "rows": strconv.Itoa(rows), "gap": "1 mm", "panelTolerance": "1 mm", "open": "40"}
	}
	coat := func(coats string) object {
		return object{"kind": "coat", "name": "Paint", "area": "mask", "coats": coats, "by": "spread", "spread": "300", "spreadUnit": "ft2/gal", "loss": "10", "binder": "water",
			"recoatHours": "1", "dryHours": "2", "voc": "50", "vocUnit": "g/L", "cans": list{can("1", "gal", "33")}}
	}
	long := strings.Repeat("a long name ", 4_000)
	return map[string][]byte{
		"five million coats":         planWith(t, "days", object{"/finish/steps": list{coat("5000000")}}),
		"a thousand coats to plan":   planWith(t, "priced", object{"/finish/steps": manyOf(19, func(int) any { return coat("50") })}),
		"sixty steps of fifty coats": planWith(t, "priced", object{"/finish/steps": manyOf(60, func(int) any { return coat("50") })}),
		"24 layers of 10,000 sizes":  planWith(t, "full", object{"/mask/layers": manyOf(24, func(int) any { return object{"split": "sizes", "columnSizes": sizes(10_000), "rowSizes": sizes(1)} })}),
		"24 layers of 10,000 sizes that are wrong": planWith(t, "full", object{"/mask/layers": manyOf(24, func(int) any {
			return object{"split": "sizes", "columnSizes": manyOf(10_000, func(int) any { return "?" }), "rowSizes": sizes(2)}
		})}),
		"24 layers of 400 panels": planWith(t, "full", object{"/mask/layers": manyOf(24, func(int) any { return layer(20, 20) }), "/access/deckLength": "1.5 m", "/access/deckWidth": "0.8 m"}),
		"10,000 panels in a row":  planWith(t, "full", object{"/mask/length": "99 m", "/room/length": "100 m", "/mask/layers": list{layer(10_000, 1)}}),
		"990 columns and no two alike": planWith(t, "full", object{"/mask/length": "99 m", "/room/length": "100 m", "/mask/layers": list{object{"split": "sizes", "open": "40", "rowSizes": list{"1 m"},
			"columnSizes": manyOf(990, func(i int) any { return strconv.Itoa(95+i%11) + "." + strconv.Itoa(i) + " mm" })}}}),
		"rows in a row":                         []byte(`{"ceilingwright":1,"mask":{"layers":[{"columns":"4","rows":"1931"}],"length":"15' 9\"","width":"11' 3 1/2\""},"room":{"length":"17' 9 1/2\"","width":"13' 4\""}}`),
		"two layers of 990 panels in a row":     planWith(t, "full", object{"/mask/length": "99 m", "/room/length": "100 m", "/mask/layers": list{layer(990, 1), layer(990, 1)}}),
		"ten thousand panels and a platform":    planWith(t, "platform", object{"/mask/layers": list{layer(100, 100), layer(3, 3)}, "/mask/length": "20 m", "/mask/width": "20 m", "/room/length": "22 m", "/room/width": "22 m"}),
		"a mix of prime densities, five times":  planWith(t, "priced", object{"/finish/steps": glazes(5, 40), "/finish/kit": kitOf(40)}),
		"a mix of prime densities, sixty times": planWith(t, "priced", object{"/finish/steps": glazes(60, 40), "/finish/kit": kitOf(40)}),
		"as many parts as are read":             planWith(t, "priced", object{"/finish/steps": glazes(16, 24), "/finish/kit": kitOf(40)}),
		"names of 50 kB":                        planWith(t, "full", object{"/title": long, "/mask/layers": manyOf(2, func(int) any { l := layer(2, 2); l["name"], l["id"], l["start"] = long, long, long; return l }), "/finish/steps": manyOf(8, func(int) any { s := coat("2"); s["name"], s["id"], s["layer"] = long, long, long; return s })}),
		"panels larger than the mask": planWith(t, "pieces", object{"/mask/length": "300 mm", "/mask/width": "300 mm", "/mask/layers": list{object{"split": "sizes", "columnSizes": list{"4 m", "5 m", "4 m"}, "rowSizes": list{"3 m", "3 m"},
			"pieces": list{object{"kind": "span", "cells": "A1 A2"}, object{"kind": "joined", "cells": "A3 B3"}}}}}),
		"a mask whose length is typed anew": []byte(`{"ceilingwright":1,"mask":{"layers":[{"split":"sizes","columnSizes":["2'","1 m"],"rowSizes":["1 m","3'"],"pieces":[{"cells":"A1 B2"}]}]}}`),
	}
}

func TestHardPlansKeepAllBounds(t *testing.T) {
	schema := planSchema(t)
	for name, text := range hardPlans(t) {
		if assert.Less(t, len(text), 2<<20, name) {
			s, answer, fault := overBounds(text, schema, 20*longestWork)
			assert.Empty(t, fault, name)
			assert.Empty(t, broken(s, answer), name)
		}
	}
}
