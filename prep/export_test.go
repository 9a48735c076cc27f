package prep

// Placing serves the simulation of a crew that places the demo's marks.
var Placing = placing
