package command

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"strandway/model"
	"strandway/model/diag"
)

// tell writes a sentence about a place in the file, with the line and a caret
// under the place. Line 0 is the whole file.
func (s *source) tell(w io.Writer, line, column int, sentence string) {
	if line == 0 {
		fmt.Fprintf(w, "%s: %s\n", s.path, sentence)
		return
	}
	fmt.Fprintf(w, "%s:%d:%d: %s\n", s.path, line, column, sentence)
	lines := strings.Split(s.text, "\n")
	if line > len(lines) {
		return
	}
	shown, caret := window(lines[line-1], column-1)
	fmt.Fprintf(w, "    %s\n    %s^\n", shown, strings.Repeat(" ", caret))
}

// window gives the part of a line around a column, from 0, that fits a
// terminal, and where the column stands in it. Tabs are shown as one space.
func window(line string, column int) (shown string, caret int) {
	const width, before = 100, 60
	runes := []rune(strings.ReplaceAll(line, "\t", " "))
	column = min(column, len(runes))
	if len(runes) <= width {
		return string(runes), column
	}
	from := max(0, min(column-before, len(runes)-width))
	part, caret := string(runes[from:from+width]), column-from
	if from > 0 {
		part, caret = "…"+part, caret+1
	}
	if from+width < len(runes) {
		part += "…"
	}
	return part, caret
}

// findings writes what was found, each with its place, and gives errFaults if one is a fault.
func (s *source) findings(w io.Writer, worked *model.Worked, list diag.List) error {
	for _, f := range list {
		line, column := s.place(worked, f)
		sentence := f.String()
		if line == 0 && f.Piece != "" {
			sentence = f.Piece + ": " + sentence
		}
		s.tell(w, line, column, sentence)
	}
	if list.Faults() > 0 {
		return errFaults
	}
	return nil
}

// faults writes the faults alone, and gives errFaults if there are any.
func (s *source) faults(w io.Writer, worked *model.Worked) error {
	return s.findings(w, worked, faults(worked.Findings))
}

// drawn writes the faults of rows that were drawn nonetheless, says so, and gives
// errFaults if there are any; out is the picture, "" for none.
func (s *source) drawn(w io.Writer, worked *model.Worked, out string) error {
	list := faults(worked.Findings)
	err := s.findings(w, worked, list)
	if n := len(list); n > 0 && out != "" {
		have := "a fault"
		if n > 1 {
			have = fmt.Sprintf("%d faults", n)
		}
		fmt.Fprintf(w, "%s: the rows have %s; %s shows them as far as they can be worked\n", s.path, have, out)
	}
	return err
}

// place turns a finding's span in its piece's rows into a place in the file; line 0 when it has none.
func (s *source) place(worked *model.Worked, f diag.Finding) (line, column int) {
	piece, err := worked.PieceNamed(f.Piece)
	if err != nil || f.Span == (diag.Span{}) || s.rowsAt[piece] < 0 {
		return 0, 0
	}
	above := utf8.RuneCountInString(s.text[strings.LastIndexByte(s.text[:s.rowsAt[piece]], '\n')+1 : s.rowsAt[piece]])
	line, column = diag.Place(worked.Pieces[piece].Piece.Rows, f.Span.Start)
	if line == 1 {
		column += above
	}
	return line + strings.Count(s.text[:s.rowsAt[piece]], "\n"), column
}

// faults are the findings of severity fault.
func faults(list diag.List) diag.List {
	var out diag.List
	for _, f := range list {
		if f.Severity == diag.Fault {
			out = append(out, f)
		}
	}
	return out
}
