"use strict";
// Ties the page to the program: moves in, panels out. All figures, words and
// pictures come from the program.

const at = (id) => document.getElementById(id);
const levers = ["nuts", "free-play", "hub-nut", "slips", "drags", "inlet-early", "exhaust-early", "main-jet", "pilot-jet", "cutaway", "clip"];

// Milliseconds of each redraw, for whoever measures: working it out, putting it
// on the page, and laying the page out.
window.benchPace = [];
window.benchWhole = []; // the same for the rest of a panel

// make returns an element holding text or other elements.
function make(name, attributes, ...inside) {
	const e = document.createElement(name);
	for (const [k, v] of Object.entries(attributes)) e.setAttribute(k, v);
	e.append(...inside);
	return e;
}

// wide is how wide a picture is drawn. On a wide page it is drawn narrower and then
// grows to the page, and its letters with it to the size of the text.
function wide() {
	const inside = document.querySelector("main").clientWidth;
	return Math.round(inside > 560 ? inside / 1.2 : inside);
}

function list(title, items, name = "ul") {
	if (!items || items.length === 0) return [];
	return [make("h3", {}, title), make(name, {}, ...items.map((i) => make("li", {}, i)))];
}

function finding(f) {
	let text = f.text;
	if (f.sure) text += " - " + f.sure + ", " + f.percent + "\u00a0%";
	return f.fault ? make("span", { class: "wrong" }, "To put right: " + text) : text;
}

function wordsOf(p) {
	return [
		...list("Found", p.findings && p.findings.map(finding)),
		...list("Do first", p.first, "ol"),
		...list("Before the engine is turned", p.turning),
		...list("Readings that would tell most", p.next),
		...(p.dangers ? [make("p", {}, make("b", {}, "Take care: "), p.dangers.join(", ") + " - ", make("a", { href: "#care" }, "each in full"), ".")] : []),
		...(p.unchecked ? [make("details", {}, make("summary", {}, "Not checked: " + p.unchecked.length), make("ul", {}, ...p.unchecked.map((u) => make("li", {}, u))))] : []),
	];
}

function shareBar(percent) {
	const ns = "http://www.w3.org/2000/svg";
	const svg = document.createElementNS(ns, "svg");
	svg.setAttribute("viewBox", "0 0 100 10");
	svg.setAttribute("preserveAspectRatio", "none");
	svg.setAttribute("aria-hidden", "true");
	const r = document.createElementNS(ns, "rect");
	r.setAttribute("width", Math.max(percent, 0.4));
	r.setAttribute("height", 10);
	svg.append(r);
	return make("span", { class: "track" }, svg);
}

// care adds to the cautions in full those that are not there yet.
function care(cautions) {
	const there = new Set([...at("cautions").children].map((e) => e.textContent));
	at("cautions").append(...(cautions || []).filter((c) => !there.has(c)).map((c) => make("li", {}, c)));
	at("care").hidden = at("cautions").children.length === 0;
}

function showPanel(p) {
	const s = at(p.key);
	s.hidden = false;
	s.querySelector(".brief").textContent = p.brief + ".";
	s.querySelector(".faults").replaceChildren();
	for (const c of p.controls) {
		const e = at(c.key);
		if (e.type === "range") {
			e.min = c.least || 0;
			e.max = c.most || 0;
			e.disabled = e.min === e.max;
			e.setAttribute("aria-valuetext", c.text);
			at(c.key + "-at").textContent = c.text;
		}
		if (e.value !== c.at) e.value = c.at;
	}
	care(p.cautions);
	s.querySelector(".drawn").innerHTML = p.pictures.map((d) => "<figure>" + d.svg + "</figure>").join("");
	s.querySelector(".odds")?.replaceChildren(...(p.bars || []).map((b) =>
		make("li", {}, make("span", { class: "share" }, b.percent + "\u00a0%"), make("span", {}, b.text + " - " + b.words), shareBar(b.percent))));
	return s;
}

// showWhole also shows what does not follow the hand.
function showWhole(p) {
	const s = showPanel(p), words = s.querySelector(".words");
	const unfolded = words.querySelector("details")?.open;
	words.replaceChildren(...wordsOf(p));
	if (unfolded) words.querySelector("details")?.setAttribute("open", "");
	s.querySelector(".pending").hidden = true;
}

function showFaults(where, faults, lead) {
	where.replaceChildren();
	if (!faults) return false;
	where.append(lead, make("ul", {}, ...faults.map((f) => make("li", {}, f))));
	return true;
}

function permission(where, question, p) {
	where.replaceChildren(make("b", {}, question + " "), p.text);
	if (p.why) where.append(make("span", {}, " " + p.why.join("; ") + "."));
}

function showReport(r) {
	at("machine").textContent = r.machine;
	at("note").textContent = r.note;
	permission(at("turn"), "Turn the engine?", r.turn);
	permission(at("start"), "Start it?", r.start);
	at("order").replaceChildren(...r.order.map((s) =>
		make("li", {}, make("b", {}, s.state), ": " + s.text + (s.why ? ": " + s.why : ""))));
	at("rest").replaceChildren(...(r.rest || []).flatMap((p) => [make("h3", {}, p.title),
		make("ul", {}, ...(p.findings || []).map((f) => make("li", {}, finding(f)))),
		...(p.first ? [make("p", {}, "Do first: " + p.first.join("; "))] : [])]));
	at("cautions").replaceChildren();
	care(r.cautions);
	at("whole").hidden = false;
}

function open(text) {
	at("done").textContent = "";
	const a = JSON.parse(window.bench.open(text, wide()));
	if (showFaults(at("faults"), a.faults, "Nothing was computed. " + (a.faults || []).length + " to put right in the job file:")) return;
	for (const e of document.querySelectorAll(".panel")) e.hidden = true;
	showReport(a.report);
	for (const p of a.panels || []) showWhole(p);
	at("done").textContent = "Read: " + a.report.machine + ".";
}

// Moves wait for the next frame, so that a quick hand does not queue work. The
// finding, the picture and the odds follow the hand; the rest follows when it
// has been still for a moment.
const waiting = new Map();
const still = 200;
let resting = 0;
const unfinished = new Set();

function move(e) {
	if (waiting.size === 0) requestAnimationFrame(settle);
	waiting.set(e.target.id, e.target.value);
}

function settle() {
	const moves = [...waiting];
	waiting.clear();
	for (const [id, to] of moves) {
		const since = performance.now();
		const panel = at(id).closest(".panel");
		const a = JSON.parse(window.bench.move(id, to, wide()));
		if (!showFaults(panel.querySelector(".faults"), a.faults, untrue)) {
			for (const p of a.panels) showPanel(p);
			panel.querySelector(".pending").hidden = false;
			unfinished.add(panel.id);
		}
		panel.getBoundingClientRect(); // lays the page out, so that its time counts too
		const took = performance.now() - since;
		window.benchPace.push(took);
		at("pace").textContent = "Last redraw: " + took.toFixed(0) + " ms.";
	}
	clearTimeout(resting);
	resting = setTimeout(finish, still);
}

const untrue = "These readings cannot be true together:";

function finish() {
	for (const key of unfinished) {
		const since = performance.now();
		const a = JSON.parse(window.bench.panel(key, wide()));
		if (!showFaults(at(key).querySelector(".faults"), a.faults, untrue)) {
			for (const p of a.panels) showWhole(p);
		}
		at(key).getBoundingClientRect();
		window.benchWhole.push(performance.now() - since);
	}
	unfinished.clear();
}

function start() {
	at("text").value = window.bench.demo;
	open(window.bench.demo);
	at("done").textContent = "";
	for (const id of levers) at(id).addEventListener("input", move);
	for (const e of document.querySelectorAll(".back")) e.addEventListener("click", () => {
		const a = JSON.parse(window.bench.back(wide()));
		for (const p of a.panels || []) showWhole(p);
	});
	at("read").addEventListener("click", () => open(at("text").value));
	at("demo").addEventListener("click", () => { at("text").value = window.bench.demo; open(window.bench.demo); });
	at("moved").addEventListener("click", () => {
		at("text").value = window.bench.file();
		at("done").textContent = "The readings as moved are in the job file above.";
	});
	at("file").addEventListener("change", async (e) => {
		if (e.target.files.length === 0) return;
		at("text").value = await e.target.files[0].text();
		open(at("text").value);
	});
	let before = wide();
	new ResizeObserver(() => {
		if (wide() === before) return;
		before = wide();
		const a = JSON.parse(window.bench.draw(before));
		for (const p of a.panels || []) showWhole(p);
	}).observe(document.querySelector("main"));
	document.body.dataset.ready = "yes";
}

window.benchReady = start;

(async () => {
	try {
		const go = new Go();
		const { instance } = await WebAssembly.instantiateStreaming(fetch("bench.wasm"), go.importObject);
		await go.run(instance);
		at("machine").textContent = "The bench has stopped. Load the page again.";
	} catch (err) {
		at("machine").textContent = "The bench could not be started: " + err.message;
	}
})();
