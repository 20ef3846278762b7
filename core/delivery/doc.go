// Package delivery checks what the supplier sent against what was ordered: it
// reads the supplier's labels, counts the panels of a layer, says what to ask
// for, and lays the layer out by the panels as they were measured.
//
// A column becomes as long as its longest panel and a row as wide as its
// widest, so that nothing ever lies over a neighbour; a panel that is smaller
// leaves its gap wider. Panels that are not measured count as ordered.
package delivery
