// Puts a field into the passage at the cursor, as if it were typed: the browser's own undo takes it back.
for (const button of document.querySelectorAll('[data-put-field]')) {
  button.addEventListener('click', () => {
    const field = document.getElementById(button.dataset.into);
    field.focus();
    if (!document.execCommand('insertText', false, button.dataset.putField)) {
      field.setRangeText(button.dataset.putField, field.selectionStart, field.selectionEnd, 'end');
    }
  });
}
// A file that would be refused is told of before anything is sent.
for (const file of document.querySelectorAll('input[type=file][data-most]')) {
  file.addEventListener('change', () => {
    const tooLarge = file.files[0]?.size > Number(file.dataset.most);
    const error = document.getElementById(file.id + '-error');
    error.hidden = !tooLarge;
    error.textContent = tooLarge ? file.dataset.tooLarge : '';
    file.toggleAttribute('aria-invalid', tooLarge);
    if (tooLarge) file.value = '';
  });
}
document.documentElement.dataset.noteFields = 'ready';
