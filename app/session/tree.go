package session

import (
	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/syntax"
)

// Tree is what can be read of the present rows. Where the background has not come to them yet,
// they are read at once: edits of rows cannot wait.
func (s *Session) Tree() *syntax.Tree {
	if m := s.Made(); m != nil && m.pattern == s.Pattern() {
		return m.Tree()
	}
	if s.read.pattern != s.Pattern() || s.read.piece != s.piece {
		s.read = reading{s.Pattern(), s.piece, model.Work(s.lib, s.Pattern(), s.size).Pieces[s.piece].Tree}
	}
	return s.read.tree
}

// reading is the last tree that was read at once.
type reading struct {
	pattern *pattern.Pattern
	piece   int
	tree    *syntax.Tree
}
