package syntax

// Walk calls f for every node, outer nodes first; where f says false, the node's inside is passed over.
func Walk(nodes []Node, f func(Node) bool) {
	for _, n := range nodes {
		if !f(n) {
			continue
		}
		switch x := n.(type) {
		case *Group:
			Walk(x.Body, f)
		case *Repeat:
			Walk(x.Body, f)
			Walk(x.Ending, f)
		case *ChainN:
			Walk(x.As, f)
		}
	}
}

// placeOf is the place a node goes into; nil for none.
func placeOf(n Node) *Place {
	switch x := n.(type) {
	case *Make:
		return x.Place
	case *Group:
		return x.Place
	case *Join:
		return x.Place
	case *Yarn:
		return x.Place
	}
	return nil
}
