// Keys press the button that names them, unless something is being written.
addEventListener('keydown', (event) => {
  const writing = event.target.matches && event.target.matches('input, select, textarea');
  if (writing || event.ctrlKey || event.metaKey || event.altKey || event.key.length !== 1) return;
  const button = document.querySelector(`[data-key="${CSS.escape(event.key.toLowerCase())}"]`);
  if (button) {
    event.preventDefault();
    button.click();
  }
});
