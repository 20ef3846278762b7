// Package drawing holds a drawing as plain data: lines, rectangles, circles
// and texts in true size, each with its part in the work and the figure or the
// panel it shows. It knows no paper and no file format (drawing/svg writes
// one) and no trade: what is drawn where, package sheet decides.
//
// Every drawing has one handedness, written on it. x runs to the right and y
// downwards. Text is never mirrored.
package drawing
