// A link to a turn opens it.
function openTurn() {
  const turn = location.hash.length > 1 && document.getElementById(location.hash.slice(1));
  if (turn && turn.tagName === 'DETAILS') {
    turn.open = true;
    turn.scrollIntoView();
  }
}
addEventListener('hashchange', openTurn);
openTurn();
