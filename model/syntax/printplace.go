package syntax

import "fmt"

// lie writes on which side of what it passes a long stitch lies.
func lie(q *Place) string {
	switch q.Lie {
	case BehindIt:
		return "working behind, "
	case InFront:
		return "working in front, "
	}
	return ""
}

var loopNames = [...]string{FrontLoop: "front loop of ", BackLoop: "back loop of ", ThirdLoop: "third loop of "}

// place writes a place after its placing word.
func (p *printer) place(q *Place) string { return p.placeEach(q, false) }

// placeEach writes a place, with "each of" before the next ones where that must be said.
func (p *printer) placeEach(q *Place, each bool) string {
	s := loopNames[q.Loop]
	switch q.What {
	case InRing:
		return "ring"
	case InHook:
		return ordinal(q.N.B) + " " + p.words.ch + " from hook"
	case InTch:
		return "top of " + p.words.tch
	case InCentre:
		return s + "centre " + p.words.st
	case InGap:
		if t := p.gap(q); t != "" {
			return t
		}
	case InUnder:
		s += "other side of "
	case InFace:
		s += "face of "
	}
	if q.Of != nil {
		return s + p.placeOf(q)
	}
	if each {
		s += "each of "
	}
	s += p.what(q.Ord, q.N, q.What, q.Name, q.Chains) + p.deep(q)
	if q.Ord == Each {
		s += p.extent(q.Ext)
	}
	return s
}

// deep writes how far below a place lies.
func (p *printer) deep(q *Place) string {
	s := ""
	if q.Row > 0 {
		word := "Row"
		if p.round {
			word = p.words.rnd
		}
		s += fmt.Sprintf(" of %s %d", word, q.Row)
	}
	if q.Below > 0 {
		s += fmt.Sprintf(" %d rows below", q.Below)
	}
	return s
}

// placeOf writes "centre dc of next shell" and its like.
func (p *printer) placeOf(q *Place) string {
	var s string
	switch one := p.what(Nth, Plain(1), q.What, q.Name, q.Chains)[len("1st "):]; {
	case q.Centre:
		s = "centre " + one
	case q.Ord == Each && q.N.B > 1, q.Ord == Nth:
		s = ordinal(q.N.B) + " " + one
	case q.Ord == Each:
		s = one
	default:
		s = p.what(q.Ord, q.N, q.What, q.Name, q.Chains)
	}
	ord := q.Of.Ord
	if q.Ord == Each {
		ord = Each // the place repeats, as the group does
	}
	s += " of " + p.what(ord, Plain(1), q.Of.What, q.Of.Name, q.Of.Chains) + p.deep(q)
	if ord == Each {
		s += p.extent(q.Ext)
	}
	return s
}

// gap writes a place between stitches or groups.
func (p *printer) gap(q *Place) string {
	between := ""
	switch q.Name {
	case "group":
		between = p.words.sp + " between groups"
	case "edge":
		between = p.words.sp + " between " + p.words.sts
	default:
		if q.Ord == Each {
			return "each gap" + p.extent(q.Ext)
		}
		return p.ord(q.Ord, q.N) + plural("gap", q.Ord, q.N)
	}
	if q.Ord == Each {
		return "each " + between + p.extent(q.Ext)
	}
	return "next " + between
}

// ord writes the words before the sort of place: "next 3 ", "2nd ", "each ".
func (p *printer) ord(ord Ord, q Num) string {
	if ord == Nth {
		return ordinal(q.B) + " "
	}
	s := [...]string{Next: "next ", Same: "same ", First: "first ", Last: "last ", Each: "each "}[ord]
	if !q.isOne() && ord != Each && ord != Same {
		s += p.num(q) + " "
	}
	return s
}

func plural(word string, ord Ord, q Num) string {
	if !q.isOne() && ord != Nth && ord != Each {
		return word + "s"
	}
	return word
}

// what writes "next 3 sts", "first ch-2 sp", "each dc".
func (p *printer) what(ord Ord, q Num, what What, name string, chains int) string {
	s := p.ord(ord, q)
	st := p.words.st
	if plural("", ord, q) != "" {
		st = p.words.sts
	}
	switch what {
	case InCh, InUnder:
		return s + p.words.ch
	case InStCh:
		return s + p.words.st + " and " + p.words.ch
	case InStSp:
		return s + p.words.st + " and " + p.words.sp
	case InSp:
		return s + p.space(chains, st == p.words.sts && st != p.words.st)
	case InKind:
		return s + p.kind(name)
	case InUnit:
		if name == "" {
			name = "group"
		}
		if chains > 0 {
			return s + fmt.Sprintf("%d-st group", chains)
		}
		return s + p.unitName(name)
	case InCorner:
		if chains > 0 {
			return s + "corner " + p.space(chains, false)
		}
		return s + plural("corner", ord, q)
	case InUnworked:
		return s + "unworked " + st
	case InOpening:
		if ord == Nth {
			return s + p.words.ch + " of opening"
		}
		return "opening"
	case InOther:
		return s + st + " of other piece"
	case InSkipped:
		return s + p.words.skipped + " " + st
	case InTch:
		return s + p.words.tch
	case InEnd:
		return s + plural("row end", ord, q)
	case InGap:
		return s + plural("gap", ord, q)
	}
	return s + st
}
