// What links and forms cannot do on a board that is set up: dragging, typing, undo and redo. All else is the server's.
const desk = () => document.getElementById('desk');
const ask = (path, more) => {
  const held = new URLSearchParams(desk().dataset.query);
  for (const [name, value] of Object.entries(more)) held.set(name, value);
  return go(path + '?' + held);
};
const go = (url) => htmx.ajax('GET', url, {target: '#desk', swap: 'outerHTML show:none'});

// For the sake of transitions, htmx gives what comes the attributes of what was there for 20 ms, and does not listen to it until
// then. There are none here, and what somebody changes in that time must not be lost.
htmx.config.defaultSettleDelay = 0;

// htmx visits each element that it takes away. Of hundreds here it need not know, and their visits take longer than the answer.
document.addEventListener('htmx:beforeSwap', ({detail}) => {
  if (!detail.shouldSwap || detail.target !== desk()) return;
  for (const inert of desk().querySelectorAll('.board svg, .place:not(:focus), option')) inert.remove();
});

// Nor need it listen to each of dozens of links: whatever leads to another board is heard here.
addEventListener('click', (event) => {
  const link = event.target.closest?.('#desk a[href^="/board"]:not([download])');
  if (!link || event.defaultPrevented || event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
  event.preventDefault();
  go(link.getAttribute('href'));
});

// Undo and redo: the addresses that this page has been at.
const steps = [location.href];
let step = 0;
const mark = () => {
  for (const [name, usable] of [['back', step > 0], ['on', step < steps.length - 1]]) {
    const button = document.querySelector(`[data-step=${name}]`);
    if (button) Object.assign(button, {hidden: false, disabled: !usable});
  }
  for (const copy of document.querySelectorAll('[data-copy]')) copy.hidden = false;
  rove();
};
const walk = (by) => {
  if (!steps[step + by]) return;
  step += by;
  go(steps[step]);
};
document.addEventListener('htmx:pushedIntoHistory', () => {
  if (steps[step] !== location.href) {
    steps.splice(step + 1, Infinity, location.href);
    step = steps.length - 1;
  }
});
document.addEventListener('htmx:historyRestore', () => {
  const known = steps.lastIndexOf(location.href);
  if (known >= 0) step = known;
  mark();
});
document.addEventListener('htmx:afterSettle', mark);

// Dragging, by mouse, pen or finger.
let drag = null;
const under = (event) => document.elementFromPoint(event.clientX, event.clientY)?.closest('.place');
const lift = (from) => {
  const picture = desk().querySelector('.board svg');
  const at = from.dataset.place;
  const side = from.classList.contains('mine') ? 'mine' : 'theirs';
  const where = at.endsWith('off') ? `.slab.${side}` : `.checker.${side}.${at.endsWith('bar') ? 'bar' : 'point-' + at}`;
  [...picture.querySelectorAll(where)].pop()?.classList.add('lifted');
  const hand = document.createElement('div');
  hand.className = 'hand ' + side;
  const size = picture.getBoundingClientRect().width * 34 / 700;
  hand.style.width = hand.style.height = size + 'px';
  document.body.append(hand);
  return {hand, size};
};
const drop = () => {
  drag?.lifted?.hand.remove();
  document.querySelector('.lifted')?.classList.remove('lifted');
  document.querySelector('.place.over')?.classList.remove('over');
  drag = null;
};
addEventListener('pointerdown', (event) => {
  const from = event.button === 0 && event.target.closest?.('.place.mine, .place.theirs');
  drop();
  if (from) drag = {from, x: event.clientX, y: event.clientY};
});
addEventListener('pointermove', (event) => {
  if (!drag || !drag.lifted && Math.hypot(event.clientX - drag.x, event.clientY - drag.y) < 6) return;
  drag.lifted ??= lift(drag.from);
  const {hand, size} = drag.lifted;
  hand.style.translate = `${event.clientX - size / 2}px ${event.clientY - size / 2}px`;
  document.querySelector('.place.over')?.classList.remove('over');
  under(event)?.classList.add('over');
});
let dragged = false;
addEventListener('pointerup', (event) => {
  dragged = Boolean(drag?.lifted);
  const to = dragged && under(event);
  const from = drag?.from;
  drop();
  if (to && to !== from) ask('/board/move', {from: from.dataset.place, to: to.dataset.place});
});
addEventListener('pointercancel', drop);
addEventListener('dragstart', (event) => event.target.closest?.('.place') && event.preventDefault());
// The click that ends a drag picks nothing.
addEventListener('click', (event) => {
  if (dragged && event.target.closest?.('.place')) {
    event.preventDefault();
    event.stopImmediatePropagation();
  }
  dragged = false;
}, true);

// Keys: arrows walk over the board, which is one stop of the Tab key; a digit puts so many checkers there.
const rove = () => {
  const places = [...document.querySelectorAll('.place')];
  const active = document.activeElement;
  const stop = places.find((place) => place === active) ?? places.find((place) => place.ariaCurrent) ?? places[0];
  for (const place of places) place.tabIndex = place === stop ? 0 : -1;
};
const ways = {ArrowLeft: -1, ArrowRight: 1, ArrowUp: -14, ArrowDown: 14};
addEventListener('keydown', (event) => {
  const place = event.target.closest?.('.place');
  const control = event.ctrlKey || event.metaKey;
  const writing = event.target.matches?.('input:not([type=checkbox]), textarea');
  if (control && !writing && 'zy'.includes(event.key.toLowerCase())) {
    event.preventDefault();
    walk(event.key === 'z' ? -1 : 1);
  } else if (place && ways[event.key] && !control) {
    event.preventDefault();
    const places = [...document.querySelectorAll('.place')];
    const sideways = Math.abs(ways[event.key]) === 1 && place.closest('.left') ? -1 : 1;
    places[places.indexOf(place) + ways[event.key] * sideways]?.focus();
    rove();
  } else if (place && /^Digit[0-9]$/.test(event.code) && !control && !event.altKey) {
    event.preventDefault();
    ask('/board/put', {place: place.dataset.place, [event.shiftKey ? 'theirs' : 'mine']: event.code.slice(5)});
  } else if (event.key === 'Escape') {
    document.querySelector('.place[aria-current]')?.click();
  }
});
document.addEventListener('click', (event) => {
  const {step: way, copy} = event.target.dataset ?? {};
  if (way) walk(way === 'back' ? -1 : 1);
  if (copy) navigator.clipboard.writeText(document.getElementById(copy).value).then(() => {
    document.getElementById('said').textContent = 'Copied.';
  });
});
mark();
