package app

import (
	"strandway/app/action"
	"strandway/app/translation"
)

// inLanguage says the table in the language of the window.
func inLanguage(t action.Table) action.Table {
	for _, a := range t {
		a.Menu, a.Label = translation.Say(a.Menu), translation.Say(a.Label)
	}
	return t
}
