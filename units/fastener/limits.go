package fastener

// nutMinorTolerance returns how far over its basic size the minor diameter of a
// nut may be, in millimetres: 0.375 p for BA (BS 93, printed); a quarter of the
// pitch for others, which is near what the standards allow (from memory).
func nutMinorTolerance(t *Thread) float64 {
	p := t.pitch.Millimetres()
	if t.form == AssociationForm {
		return 0.375 * p
	}
	return 0.25 * p
}
