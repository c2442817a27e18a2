package refdata

import "strconv"

// nameThread returns the name the trade writes.
func nameThread(t *Thread) string {
	switch t.System {
	case BSW, BSF:
		return t.Size + " " + t.System.String()
	case Cycle:
		n := t.Size + "-" + tpiText(t) + " cycle"
		if t.ThreadsPerInch == 20 { // the form is an open question: both are served
			n += " " + strconv.Itoa(int(t.Included.Degrees())) + "°"
		}
		return n
	case BA:
		return t.Size + " BA"
	case BSPP:
		return "G " + t.Size
	case UNC, UNF, Brass:
		return t.Size + "-" + tpiText(t) + " " + t.System.String()
	case Spoke:
		return t.Size + " SWG spoke"
	}
	return t.Size
}

func tpiText(t *Thread) string { return strconv.FormatFloat(t.ThreadsPerInch, 'g', -1, 64) }

// threadNames returns other names a thread is asked for by.
func threadNames(t *Thread) []string {
	tpi := t.Size + "-" + tpiText(t)
	switch t.System {
	case BSW:
		return []string{tpi + " BSW", t.Size + " Whitworth", t.Size + " Whit"}
	case BSF:
		return []string{tpi + " BSF"}
	case Cycle:
		return []string{tpi + " BSC", tpi + " CEI", tpi + " cycle", t.Size + " cycle " + tpiText(t) + " tpi", t.Size + " BSC", t.Size + " CEI", t.Size + " cycle"}
	case BSPP:
		return []string{t.Size + " BSP", t.Size + " BSPP"}
	case UNC, UNF, Brass:
		return []string{t.Size + " " + t.System.String()}
	case Spoke:
		return []string{t.Size + " spoke", tpi + " spoke"}
	case MetricCoarse:
		return []string{t.Size + "x" + strconv.FormatFloat(t.Pitch.Millimetres(), 'g', -1, 64)}
	}
	return nil
}
