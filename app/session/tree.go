package session

import (
	"strandway/model"
	"strandway/model/syntax"
)

// Tree is what can be read of the present rows. Where the background has not come to them yet,
// they are read at once: edits of rows cannot wait.
func (s *Session) Tree() *syntax.Tree {
	if m := s.Made(); m != nil && m.pattern == s.Pattern() {
		return m.Tree()
	}
	return model.Work(s.lib, s.Pattern(), s.size).Pieces[s.piece].Tree
}
