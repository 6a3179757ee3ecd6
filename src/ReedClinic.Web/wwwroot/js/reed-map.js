// Arrow keys walk from zone to zone of a reed map: one tab stop for each drawing part, the nearest zone in that direction next.
const steps = { ArrowUp: [0, -1], ArrowDown: [0, 1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] };

function middle(zone) {
  const box = zone.getBoundingClientRect();
  return [box.left + box.width / 2, box.top + box.height / 2];
}

function next(from, [dx, dy]) {
  const [x, y] = middle(from);
  let best = null;
  let least = Infinity;
  for (const zone of from.closest("svg").querySelectorAll("[data-reed-zone]")) {
    const [zx, zy] = middle(zone);
    const along = (zx - x) * dx + (zy - y) * dy;
    const across = Math.abs((zx - x) * dy) + Math.abs((zy - y) * dx);
    if (zone !== from && along > 1 && along + 2.5 * across < least) {
      least = along + 2.5 * across;
      best = zone;
    }
  }
  return best;
}

document.addEventListener("keydown", (event) => {
  const zone = event.target instanceof Element ? event.target.closest("[data-reed-zone]") : null;
  if (!zone) return;
  if (event.key === " ") event.preventDefault();
  const step = steps[event.key];
  if (!step) return;
  event.preventDefault();
  const other = next(zone, step);
  if (other) {
    zone.setAttribute("tabindex", "-1");
    other.setAttribute("tabindex", "0");
    other.focus();
  }
});
