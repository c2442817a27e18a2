package main
import ("testing";"encoding/json";"fmt"
"example.com/benchbook/timing/crank"
"example.com/benchbook/timing"
"example.com/benchbook/timing/gear"
"example.com/benchbook/units"
"example.com/benchbook/units/measure")
func TestZ(t *testing.T){
 p:=func(v any,e error){b,err:=json.Marshal(v);fmt.Println(string(b),err,e)}
 s:=crank.Slider{Stroke:83*units.Millimetre,Rod:165*units.Millimetre}
 p(s,nil)
 m,e:=s.Motion(units.Before(units.TDC,37*units.CrankDegree),units.RevolutionsPerMinute(5200)); p(m,e)
 q,e:=s.Positions(10*units.Millimetre); p(q,e)
 tr:=gear.Simple(24,48); w,e:=tr.ToothWorth(0); p(w,e); p(tr,nil)
 p(measure.MustReadPosition("25 BTDC",measure.DegreeDisc()),nil)
 p(units.Celsius(20),nil); p(crank.CrankingOptions{},nil)
 r,e:=timing.ReadEvents("19 BTDC","38 ABDC","35 BBDC","22 ATDC"); p(r,e)
 _,e=s.Positions(1000*units.Millimetre); p(nil,e)
 x:=timing.Input{}; p(x,nil)
 c:=crank.Cylinder{Bore:78*units.Millimetre,Slider:s}; c,_=c.WithRatio(6.8); k,e:=c.Cranking(units.After(units.BDC,48*units.CrankDegree),crank.CrankingOptions{});p(k,e)
}
