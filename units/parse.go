package units

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/benchbook/units/fault"
)

// A number is num/den with both parts whole where the text was short enough,
// so that multiplying by a unit's own whole numbers rounds once, at the end.
type number struct {
	num, den float64
	neg      bool
}

// exactDigits is how many decimal digits a float64 holds as a whole number.
const exactDigits = 15

var pow10 = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15}

// parse reads s as k's quantity: the value in the stored unit, what was
// assumed, and a fault.Fault. It allocates only for a fault.
func parse(k *kind, s string) (float64, string, error) {
	t := trim(s)
	n, rest, ok := scanNumber(t)
	if !ok {
		return 0, "", k.fail(fault.NotANumber, s, "expected a number with its unit, such as "+k.example)
	}
	rest = trim(rest)
	if k.shaft != "" || k == &angleKind {
		var err error
		if rest, err = k.takeShaft(s, rest); err != nil {
			return 0, "", err
		}
	}
	u := k.find(rest)
	if u == nil {
		if v, note, done, err := k.parsePair(s, n, rest); done {
			return v, note, err
		}
		if u = k.loose(rest); u == nil {
			return 0, "", k.unitFault(s, rest)
		}
	}
	v := n.times(u)
	if v-v != 0 {
		return 0, "", k.fail(fault.OutOfRange, s, "too large to hold")
	}
	if v < 0 && k.affine {
		return 0, "", k.fail(fault.OutOfRange, s, "not below absolute zero")
	}
	return v, u.note, nil
}

// times returns the number in the stored unit.
func (n number) times(u *unit) float64 {
	num := n.num
	if n.neg {
		num = -num
	}
	if u.per {
		return u.num * n.den / (u.den * num)
	}
	if u.off != 0 || u.post != 0 {
		return (num/n.den+u.off)*u.num/u.den + u.post
	}
	if num == 0 {
		return 0
	}
	return num * u.num / (n.den * u.den)
}

// takeShaft strips the shaft's name from the end of the unit and refuses the
// other shaft's, and an angle that names none where one is wanted.
func (k *kind) takeShaft(s, rest string) (string, error) {
	crank, isCrank := strings.CutSuffix(rest, "crank")
	cam, isCam := strings.CutSuffix(rest, "cam")
	switch {
	case isCrank && k.shaft == "crank":
		return trim(crank), nil
	case isCam && k.shaft == "cam":
		return trim(cam), nil
	case isCrank || isCam:
		want := "a plain angle"
		if k.shaft != "" {
			want = "degrees of the " + k.shaft
		}
		return "", k.fail(fault.WrongShaft, s, want+" wanted, such as "+k.example)
	case k.shaft != "":
		return "", k.fail(fault.UnitMissing, s, "say which shaft: "+k.example)
	}
	return rest, nil
}

// parsePair reads a second figure in a smaller unit: 5' 11 1/2", 45°30'. The
// second of "3 ft 6" and "10 stone 4" may go without, and is noted; not that of
// an angle, where 30 may be minutes or a slip for a decimal.
func (k *kind) parsePair(s string, n number, rest string) (v float64, note string, done bool, err error) {
	if len(k.pairs) == 0 {
		return 0, "", false, nil
	}
	at := strings.IndexAny(rest, "0123456789½¼¾⅛⅜⅝⅞")
	if at <= 0 {
		return 0, "", false, nil
	}
	big := k.either(trim(rest[:at]))
	if big == nil {
		return 0, "", false, nil
	}
	n2, rest2, ok := scanNumber(rest[at:])
	if !ok {
		return 0, "", false, nil
	}
	rest2 = trim(rest2)
	small := k.either(rest2)
	if rest2 == "" {
		if small = k.below(big); small != nil {
			note = rest[at:] + " read as " + small.symbol
		}
	}
	if small == nil {
		// degrees, minutes and seconds: one more figure
		small = k.find(firstUnit(rest2))
		if small == nil || !k.pairAllowed(big, small) {
			return 0, "", false, nil
		}
		tail, note, done, err := k.parsePair(s, n2, rest2)
		if !done || err != nil {
			return 0, "", done, err
		}
		return n.signed(n.abs().times(big) + tail), note, true, nil
	}
	if !k.pairAllowed(big, small) {
		return 0, "", false, nil
	}
	if small.num/small.den*n2.num/n2.den >= big.num/big.den*(1-8*ulp) { // twelve inches are a foot however they round
		return 0, "", true, k.fail(fault.OutOfRange, s, "the second figure must be less than one "+big.symbol)
	}
	if note == "" {
		note = small.note
	}
	return n.signed(n.abs().times(big) + n2.times(small)), note, true, nil
}

// either finds a unit as it is written, or abbreviated.
func (k *kind) either(s string) *unit {
	if u := k.find(s); u != nil || s == "" {
		return u
	}
	return k.loose(s)
}

// below returns the unit that a bare second figure after big is in.
func (k *kind) below(big *unit) *unit {
	if k != &lengthKind && k != &massKind {
		return nil
	}
	for _, p := range k.pairs {
		if a, b, _ := strings.Cut(p, ">"); k.same(a, big) {
			return k.find(b)
		}
	}
	return nil
}

func (n number) abs() number { n.neg = false; return n }

func (n number) signed(v float64) float64 {
	if n.neg {
		return -v
	}
	return v
}

func (k *kind) pairAllowed(big, small *unit) bool {
	for _, p := range k.pairs {
		a, b, _ := strings.Cut(p, ">")
		if k.same(a, big) && k.same(b, small) {
			return true
		}
	}
	return false
}

// same reports whether symbol names the unit u, in any spelling.
func (k *kind) same(symbol string, u *unit) bool {
	v := k.find(symbol)
	return v != nil && v.num == u.num && v.den == u.den
}

// firstUnit returns the text of s before its first digit.
func firstUnit(s string) string {
	if at := strings.IndexAny(s, "0123456789"); at > 0 {
		return trim(s[:at])
	}
	return s
}

// unitFault says what is wrong with the unit rest.
func (k *kind) unitFault(s, rest string) error {
	if rest == "" {
		return k.fail(fault.UnitMissing, s, "say the unit of this "+k.name+": "+k.choices)
	}
	for _, a := range k.ambiguous {
		if a.symbol == rest {
			return fault.Fault{Code: fault.UnitAmbiguous, Value: s, Unit: rest, Rule: rest + " has more than one size; write " + a.choices}
		}
	}
	f := k.fail(fault.UnitUnknown, s, strconv.Quote(rest)+" is not a unit of "+k.name+"; write one of "+k.choices)
	f.Unit = rest
	if strings.HasPrefix(rest, ",") {
		f.Rule = "write a decimal point, not a comma, and nothing between thousands"
		f.Code = fault.NotANumber
	}
	return f
}

func (k *kind) fail(code fault.Code, value, rule string) fault.Fault {
	return fault.Fault{Code: code, Value: strings.TrimSpace(value), Unit: strings.TrimSpace(k.stored + " " + k.shaft), Rule: rule}
}

// trim drops white space, the no-break kind among it, at both ends.
func trim(s string) string {
	for len(s) > 0 {
		n := 1
		if c := s[0]; c >= utf8.RuneSelf {
			var r rune
			if r, n = utf8.DecodeRuneInString(s); !unicode.IsSpace(r) {
				break
			}
		} else if !space(c) {
			break
		}
		s = s[n:]
	}
	for len(s) > 0 {
		n := 1
		if c := s[len(s)-1]; c >= utf8.RuneSelf {
			var r rune
			if r, n = utf8.DecodeLastRuneInString(s); !unicode.IsSpace(r) {
				break
			}
		} else if !space(c) {
			break
		}
		s = s[:len(s)-n]
	}
	return s
}

func space(c byte) bool { return c == ' ' || c >= '\t' && c <= '\r' }

// scanNumber reads a sign and a whole number, decimal, fraction or mixed
// number: 12, -0.5, 5/16, 1 3/8, 1-3/8, 1½, 2e-3.
func scanNumber(s string) (n number, rest string, ok bool) {
	if s == "" {
		return n, s, false
	}
	if s[0] == '-' {
		n.neg, s = true, s[1:]
	} else if s[0] == '+' {
		s = s[1:]
	} else if r, found := strings.CutPrefix(s, "−"); found {
		n.neg, s = true, r
	}
	whole, i, simple := scanDecimal(s, &n)
	if i == 0 {
		if v, size := vulgar(s); size > 0 {
			n.num, n.den = float64(v.num), float64(v.den)
			return n, s[size:], true
		}
		return n, s, false
	}
	rest = s[i:]
	if !simple { // a decimal point or an exponent: no fraction may follow
		return n, rest, true
	}
	// a fraction with this as its numerator
	if tail, found := cutSlash(rest); found {
		d, j := scanWhole(tail)
		if j > 0 {
			if d == 0 {
				return n, s, false
			}
			n.num, n.den = whole, d
			return n, tail[j:], true
		}
		return n, rest, true
	}
	// or a mixed number
	if v, size := vulgar(trim(rest)); size > 0 {
		n.num, n.den = whole*float64(v.den)+float64(v.num), float64(v.den)
		return n, trim(rest)[size:], true
	}
	gap := 0
	for gap < len(rest) && rest[gap] == ' ' {
		gap++
	}
	if gap == 0 && rest != "" && rest[0] == '-' {
		gap = 1
	}
	if gap > 0 {
		if a, j := scanWhole(rest[gap:]); j > 0 {
			if tail, found := cutSlash(rest[gap+j:]); found {
				if d, l := scanWhole(tail); l > 0 && d > 0 && a < d {
					n.num, n.den = whole*d+a, d
					return n, tail[l:], true
				}
			}
		}
	}
	return n, rest, true
}

// scanDecimal reads digits with an optional point and exponent into n. simple
// reports that there was neither.
func scanDecimal(s string, n *number) (whole float64, i int, simple bool) {
	var m uint64
	digits, frac, point := 0, 0, false
	for i < len(s) {
		c := s[i]
		if c >= '0' && c <= '9' {
			if digits < exactDigits {
				m = m*10 + uint64(c-'0')
			}
			if m > 0 {
				digits++
			}
			if point {
				frac++
			}
		} else if c == '.' && !point && i+1 < len(s) && s[i+1] >= '0' && s[i+1] <= '9' {
			point = true
		} else {
			break
		}
		i++
	}
	if i == 0 {
		return 0, 0, false
	}
	end := i
	exponent := false
	if j := i; j+1 < len(s) && (s[j] == 'e' || s[j] == 'E') {
		j++
		if s[j] == '-' || s[j] == '+' {
			j++
		}
		start := j
		for j < len(s) && s[j] >= '0' && s[j] <= '9' {
			j++
		}
		if j > start {
			end, exponent = j, true
		}
	}
	if exponent || digits > exactDigits || frac >= len(pow10) {
		v, err := strconv.ParseFloat(s[:end], 64)
		if err != nil {
			v = inf
		}
		n.num, n.den = v, 1
		return v, end, !point && !exponent
	}
	n.num, n.den = float64(m), pow10[frac]
	return n.num, end, !point
}

func scanWhole(s string) (float64, int) {
	i := 0
	var m uint64
	for i < len(s) && s[i] >= '0' && s[i] <= '9' && i < exactDigits {
		m = m*10 + uint64(s[i]-'0')
		i++
	}
	return float64(m), i
}

func cutSlash(s string) (string, bool) {
	if s != "" && s[0] == '/' {
		return s[1:], true
	}
	if s != "" && s[0] >= utf8.RuneSelf {
		return strings.CutPrefix(s, "⁄")
	}
	return s, false
}

// vulgar reads one Unicode fraction character.
func vulgar(s string) (f struct{ num, den uint8 }, size int) {
	if s == "" || s[0] < utf8.RuneSelf {
		return f, 0
	}
	r, size := utf8.DecodeRuneInString(s)
	switch r {
	case '½':
		f.num, f.den = 1, 2
	case '¼':
		f.num, f.den = 1, 4
	case '¾':
		f.num, f.den = 3, 4
	case '⅛':
		f.num, f.den = 1, 8
	case '⅜':
		f.num, f.den = 3, 8
	case '⅝':
		f.num, f.den = 5, 8
	case '⅞':
		f.num, f.den = 7, 8
	case '⅓':
		f.num, f.den = 1, 3
	case '⅔':
		f.num, f.den = 2, 3
	case '⅕':
		f.num, f.den = 1, 5
	case '⅖':
		f.num, f.den = 2, 5
	case '⅗':
		f.num, f.den = 3, 5
	case '⅘':
		f.num, f.den = 4, 5
	case '⅙':
		f.num, f.den = 1, 6
	case '⅚':
		f.num, f.den = 5, 6
	case '⅐':
		f.num, f.den = 1, 7
	case '⅑':
		f.num, f.den = 1, 9
	case '⅒':
		f.num, f.den = 1, 10
	default:
		return f, 0
	}
	return f, size
}
