// A button that prints the page it stands on; without scripts the browser's own menu does the same.
for (const button of document.querySelectorAll('[data-print]')) {
  button.addEventListener('click', () => window.print());
}
