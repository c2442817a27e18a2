// A front end in JavaScript that checks its own formulas against the check values
// of this library: node check.mjs [vectors.json]. Exit status 1 if any misses.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
const index = process.argv[2] ? pathToFileURL(process.argv[2]) : new URL('vectors.json', import.meta.url);
const read = (url) => JSON.parse(readFileSync(url, 'utf8'));
const cases = read(index).files.flatMap(({ file }) => read(new URL(file, index)).cases);
const radians = (degrees) => degrees * Math.PI / 180;
const head = (height) => 1 - 0.0065 * height / 288.15; // temperature ratio, m

// The front end's own functions, by the function each must agree with. Figures
// come in the units of the file: mm, degrees, N/m, Pa. undefined: not for this one.
const own = {
  'units.Inches': (v) => ({ answer: v.inches * 25.4 }),
  'timing/gear.Train.ToothWorth': (v, text) => v.mesh ? undefined : { crank: 360 / Number(text.train.split(':')[0]) },
  'timing/crank.Slider.Travel': (v) => {
    if (v['slider.offset'] || v['slider.rod'] <= v['slider.stroke'] / 2) return undefined;
    const r = v['slider.stroke'] / 2, l = v['slider.rod'], a = radians(v.at);
    return { answer: r * (1 - Math.cos(a)) + l - Math.sqrt(l * l - (r * Math.sin(a)) ** 2) };
  },
  'transmission/spring.Rate': (v) =>
    v.wire < v.mean ? { answer: v.shear_modulus * (v.wire / 1000) ** 4 / (8 * (v.mean / 1000) ** 3 * v.active) } : undefined,
  'carburation/air.Standard': (v) =>
    v.height <= 11e6 ? { pressure: 101325 * head(v.height / 1000) ** (9.80665 / (0.0065 * 287.05287)) } : undefined,
};

const pick = (figures, key) => Object.fromEntries(Object.entries(figures).map(([name, f]) => [name, f[key]]));
let checked = 0, missed = 0;
for (const c of cases.filter((c) => own[c.function] && !c.expected.fault)) { // refusals it leaves to others
  for (const [name, got] of Object.entries(own[c.function](pick(c.inputs, 'value'), pick(c.inputs, 'text')) ?? {})) {
    const { value, unit, tol } = c.expected[name];
    checked++;
    if (Math.abs(got - value) <= Math.max(tol.abs ?? 0, (tol.rel ?? 0) * Math.abs(value))) continue;
    missed++;
    console.error(`${c.id}: ${name} is ${got}, the library has ${value} ${unit}`);
  }
}
console.log(`${checked} figures of ${Object.keys(own).length} functions checked, ${missed} missed`);
process.exitCode = missed > 0 || checked < 5 ? 1 : 0;
