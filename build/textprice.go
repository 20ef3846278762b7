package main

import "ceilingwright/core/sheet"

// price is the firm's own price, the client's copy of it, and what would change it.
func (p *paper) price(price sheet.Price) {
	p.block("price")
	p.line(1, price.Text)
	p.line(1, price.Quoted)
	p.line(1, price.PerArea)
	for _, l := range price.Lines {
		sum := l.Sum
		if l.Rate != "" {
			sum = l.Amount + " at " + l.Rate + " = " + sum
		}
		p.line(1, l.Group, ": ", l.What, ": ", sum)
		p.made(2, l.Working)
	}
	p.sums("", price.Totals)
	p.sums("the client's copy: ", price.Client)
	p.sums("to be paid: ", price.Stages)
	p.told(1, "rough price of a first visit", price.Range)
	for _, w := range price.WhatIf {
		p.line(1, "what if: ", w.What, ": ", w.Sum, note(w.Change), " ", w.Text)
	}
}

func (p *paper) sums(before string, sums []sheet.Total) {
	for _, t := range sums {
		p.line(1, before, t.What, ": ", t.Sum, note(t.Text))
		p.made(2, t.Working)
	}
}
