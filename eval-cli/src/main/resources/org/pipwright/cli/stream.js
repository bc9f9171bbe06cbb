// A page listens only while somebody looks at it; a rollout can be stopped.
const stream = () => document.getElementById('stream');
const listen = (html) => htmx.swap(stream(), html, {swapStyle: 'innerHTML', swapDelay: 0, settleDelay: 0});
let held = '';
const rest = () => {
  if (!stream() || held) return;
  held = stream().innerHTML;
  listen('');
};
const resume = () => {
  if (!held || document.hidden) return;
  listen(held);
  held = '';
};
document.addEventListener('visibilitychange', () => document.hidden ? rest() : resume());
addEventListener('pagehide', rest);
if (document.hidden) rest();
addEventListener('pageshow', resume);
document.addEventListener('htmx:sseClose', (event) => {
  if (event.detail.type !== 'message') return;
  document.querySelector('[data-stop]')?.remove();
  stream().textContent = '';
});
document.addEventListener('click', (event) => {
  const stop = event.target.closest?.('[data-stop]');
  if (!stop) return;
  listen('');
  stop.remove();
  document.getElementById('said').textContent = 'Stopped.';
});
