// The drawing, to scale: one unit is one millimeter.

import { BLOCK_BASE_CM, TANK, block_height_cm } from "./model.js";

const SVG = "http://www.w3.org/2000/svg";
const MM = 10;
const LEFT = 30;
const FLOOR = 158;
const RIGHT = LEFT + TANK.width_cm * MM;
const RIM = FLOOR - TANK.height_cm * MM;
const BLOCK_LEFT = LEFT + 0.42 * TANK.width_cm * MM - (BLOCK_BASE_CM * MM) / 2;
const BLOCK_RIGHT = BLOCK_LEFT + BLOCK_BASE_CM * MM;

// The block hangs just clear of the liquid, so that the heaviest and the lightest start alike.
export const start_bottom_cm = TANK.liquid_cm + 1;

const at = (height_cm) => FLOOR - height_cm * MM;

function draw(parent, name, attributes, text = "") {
  const node = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  if (text) node.textContent = text;
  parent.append(node);
  return node;
}

function ruler(parent) {
  const ticks = [];
  for (let half = 0; half <= 2 * TANK.height_cm; half += 1) {
    const long = half % 10 === 0 ? 9 : half % 2 === 0 ? 6 : 3;
    ticks.push(`M${LEFT} ${at(half / 2)}h${-long}`);
  }
  draw(parent, "path", { class: "tick", d: ticks.join("") });
  for (const cm of [0, 5, 10]) draw(parent, "text", { class: "tick-word", x: LEFT - 11, y: at(cm) + 3, "text-anchor": "end" }, String(cm));
  draw(parent, "text", { class: "tick-word", x: LEFT - 11, y: at(TANK.height_cm) + 3, "text-anchor": "end" }, "cm");
}

export function make_tank(svg) {
  const water = draw(svg, "rect", { class: "liquid", x: LEFT, width: TANK.width_cm * MM });
  const block = draw(svg, "rect", { class: "block", x: BLOCK_LEFT, width: BLOCK_BASE_CM * MM });
  const surface = draw(svg, "path", { class: "surface" });
  const string = draw(svg, "path", { class: "string" });
  draw(svg, "path", { class: "wall", d: `M${LEFT} ${RIM}V${FLOOR}H${RIGHT}V${RIM}` });
  ruler(svg);
  const liquid_word = draw(svg, "text", { class: "word second", x: LEFT + 5, y: FLOOR - 6 });
  const mass_word = draw(svg, "text", { class: "word strong", x: BLOCK_RIGHT + 7 });
  const volume_word = draw(svg, "text", { class: "word", x: BLOCK_RIGHT + 7 });
  const bracket = draw(svg, "path", { class: "bracket" });
  const under_word = draw(svg, "text", { class: "word", x: BLOCK_RIGHT + 11 });

  // `bottom_cm` is the block's lower face, null while it hangs; `under` is what to write at the bracket, "" for none.
  return function show({ mass_g, volume_mL, bottom_cm, level_cm, liquid_name, under_cm, settled }) {
    const height = block_height_cm(volume_mL) * MM;
    const bottom = at(bottom_cm ?? start_bottom_cm);
    const top = bottom - height;
    const level = at(level_cm);
    water.setAttribute("y", level);
    water.setAttribute("height", FLOOR - level);
    block.setAttribute("y", top);
    block.setAttribute("height", height);
    surface.setAttribute("d", surface_line(level, top, bottom));
    string.setAttribute("d", bottom_cm === null ? `M${(BLOCK_LEFT + BLOCK_RIGHT) / 2} 0V${top}` : "");
    liquid_word.textContent = liquid_name;
    const floats = settled && under_cm !== null;
    place_words(mass_word, volume_word, { top, bottom, level, floats });
    mass_word.textContent = `${mass_g} g`;
    volume_word.textContent = `${volume_mL} mL`;
    bracket.setAttribute("d", floats ? `M${BLOCK_RIGHT + 3} ${level}h4V${bottom}h-4` : "");
    under_word.setAttribute("y", Math.max((level + bottom) / 2 + 3.5, level + 10));
    under_word.textContent = floats ? `${under_cm.toFixed(1)} cm under` : "";
  };
}

// The surface runs behind a block that floats high and over one that is under.
function surface_line(level, top, bottom) {
  const crosses = top < level && bottom > level;
  return crosses ? `M${LEFT} ${level}H${BLOCK_LEFT}M${BLOCK_RIGHT} ${level}H${RIGHT}` : `M${LEFT} ${level}H${RIGHT}`;
}

// Words keep clear of the surface and of the bracket: above the water for a floating block, beside it otherwise.
function place_words(mass_word, volume_word, { top, bottom, level, floats }) {
  const middle = (top + bottom) / 2;
  const y = floats ? level - 16 : Math.min(middle, FLOOR - 15) - 1.5;
  mass_word.setAttribute("y", y);
  volume_word.setAttribute("y", y + 11);
}
