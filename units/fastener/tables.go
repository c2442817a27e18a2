package fastener

// tables returns the threads of all tables. The caller must not change it.
func tables() []Thread { return nil }
