package units

type Length float64

type Force float64

type Ratio float64

type Datum uint8

const (
	Millimetre Length = 1
	Inch       Length = 25.4
	Newton     Force  = 1
)

type Quantity interface {
	Length | Force | Ratio
	SI() float64
}

func Millimetres(x float64) Length { return Length(x) }

func FromSI[Q Quantity](x float64) Q { return Q(x) }

func (l Length) SI() float64             { return float64(l) / 1000 }
func (l Length) Times(k float64) Length  { return Length(float64(l) * k) }
func (l Length) Ratio(m Length) float64  { return float64(l) / float64(m) }
func (f Force) SI() float64              { return float64(f) }
func product(l, m Length) (Length, bool) { return l * m, l > 5 }

func (r Ratio) SI() float64 { return float64(r) }
