// Tells what a place on a drawing stands for: under the mouse, at a tap, or by the arrow keys.
for (const told of document.querySelectorAll('.told')) {
  const words = told.querySelector('.words');
  const places = [...told.querySelectorAll('.places rect')];
  const box = place => ({
    x: +place.getAttribute('x') + place.getAttribute('width') / 2,
    y: +place.getAttribute('y') + place.getAttribute('height') / 2,
  });
  let chosen = null;

  function choose(place) {
    if (place === chosen) return;
    chosen?.classList.remove('chosen');
    chosen = place;
    chosen.classList.add('chosen');
    words.textContent = chosen.dataset.words;
  }

  // Beside the chosen place, the nearest one that lies in the wanted direction; what lies askew counts as farther.
  function beside(right, down) {
    const here = box(chosen);
    let best = null;
    let least = Infinity;
    for (const place of places) {
      const there = box(place);
      const along = (there.x - here.x) * right + (there.y - here.y) * down;
      const askew = Math.abs((there.x - here.x) * down) + Math.abs((there.y - here.y) * right);
      if (along > 0.5 && along + 4 * askew < least) {
        least = along + 4 * askew;
        best = place;
      }
    }
    return best;
  }

  const ways = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] };
  told.addEventListener('keydown', event => {
    const way = ways[event.key];
    if (!way) return;
    event.preventDefault();
    const next = chosen ? beside(...way) : places[0];
    if (next) {
      choose(next);
      next.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    }
  });
  told.addEventListener('focus', () => { if (!chosen && told.matches(':focus-visible')) choose(places[0]); });
  for (const place of places) {
    place.addEventListener('pointerenter', () => choose(place));
    place.addEventListener('click', () => choose(place));
  }
}
