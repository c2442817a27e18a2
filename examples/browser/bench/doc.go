// Command bench is the library as the browser page sees it. Built for wasm it
// sets one object, bench, on the page:
//
//	bench.demo                   the demonstration job file
//	bench.open(text, width)      read a job file and work it whole
//	bench.move(key, to, width)   move one control; finding, picture and odds of
//	                             the panel it bears on
//	bench.panel(key, width)      a panel whole
//	bench.draw(width)            all panels anew, at another width
//	bench.back(width)            all panels with every reading as in the file
//	bench.file()                 the job file with the readings as moved
//
// All but the first and last answer with JSON text: either faults, a list
// of sentences, or report and panels. Width is that of the pictures in CSS pixels. When all of
// this is there it calls the page's function benchReady.
package main
