package slim

import (
	"encoding/binary"
	"fmt"
)

// Instructions that are written or looked for here.
const (
	opLocalGet = 0x20
	opLocalSet = 0x21
	opLocalTee = 0x22
	opI64Const = 0x42
	opI64Or    = 0x84
	typeI64    = 0x7e
)

// firstPC is the number that the first function of a Go program has in a pc; its
// other 16 bits say where in the function (cmd/link/internal/wasm, assignAddress).
const firstPC = 0x1000

// shortenPCs rewrites the code section: before every call a Go function stores
// the pc to return to, a number of 5 bytes of which 3 are the function's own. They
// break what is otherwise the same at every call, where a compressor would find
// it again. So a function keeps those 3 in a local and adds the rest by or: the
// same number, whatever it is used for. 45,000 calls, 47 kB in brotli, no time
// that can be measured.
func shortenPCs(code []byte, params []int) ([]byte, error) {
	r := reader{left: code}
	n := r.count()
	if n != len(params) {
		return nil, fmt.Errorf("it has %d functions and the types of %d", n, len(params))
	}
	out := binary.AppendUvarint(nil, uint64(n))
	for i := range n {
		body, err := shortenFunction(r.take(r.count()), int64(firstPC+i), params[i])
		if err != nil {
			return nil, fmt.Errorf("function %d: %w", i, err)
		}
		out = append(out, sized(body)...)
	}
	return out, r.err
}

// shortenFunction rewrites one body. The new local is the first after the
// params, in every function the same, and the others move up by one.
func shortenFunction(body []byte, own int64, params int) ([]byte, error) {
	r := reader{left: body}
	groups := r.count()
	declared := r.left
	for range groups {
		r.count()
		r.take(1)
	}
	declared = declared[:len(declared)-len(r.left)]

	mine := byte(params)
	out := binary.AppendUvarint(nil, uint64(groups+1))
	out = append(append(append(out, 1, typeI64), declared...), opI64Const)
	out = append(appendSigned(out, int(own<<16)), opLocalSet, mine)
	sites := 0
	for len(r.left) > 0 && r.err == nil {
		from := r.left
		switch op, operand := r.instruction(); {
		case op == opI64Const && operand>>16 == own:
			sites++
			out = append(appendSigned(append(out, opLocalGet, mine, opI64Const), int(operand&0xffff)), opI64Or)
		case op >= opLocalGet && op <= opLocalTee && operand >= int64(params):
			out = binary.AppendUvarint(append(out, op), uint64(operand+1))
		default:
			out = append(out, from[:len(from)-len(r.left)]...)
		}
	}
	if r.err != nil || sites == 0 {
		return body, r.err
	}
	return out, nil
}

// instruction reads over one instruction (WebAssembly Core Specification 2.0,
// section 5.4: those that the Go compiler writes). It answers the operand of an
// i64.const and the number of a local.
func (r *reader) instruction() (op byte, operand int64) {
	switch op = r.take(1)[0]; {
	case op <= 0x01, op == 0x05, op == 0x0b, op == 0x0f, op == 0x1a, op == 0x1b, op >= 0x45 && op <= 0xc4:
	case op >= 0x02 && op <= 0x04, op == 0x41: // block, loop, if; i32.const
		r.signed64()
	case op == 0x0c, op == 0x0d, op == 0x10, op >= 0x20 && op <= 0x24: // br, br_if, call; locals and globals
		operand = int64(r.count())
	case op == 0x0e: // br_table
		for range r.count() + 1 {
			if r.count(); r.err != nil {
				break
			}
		}
	case op == 0x11, op >= 0x28 && op <= 0x3e: // call_indirect; loads and stores
		r.count()
		r.count()
	case op == 0x3f, op == 0x40: // memory.size, memory.grow
		r.take(1)
	case op == opI64Const:
		operand = r.signed64()
	case op == 0x43: // f32.const
		r.take(4)
	case op == 0x44: // f64.const
		r.take(8)
	case op == 0xfc:
		switch more := r.count(); {
		case more <= 7: // truncations that saturate
		case more == 10: // memory.copy
			r.take(2)
		case more == 11: // memory.fill
			r.take(1)
		default:
			r.failWith(fmt.Errorf("the instruction fc %d is not known here", more))
		}
	default:
		r.failWith(fmt.Errorf("the instruction %x is not known here", op))
	}
	return op, operand
}
