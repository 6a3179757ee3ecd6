// Puts a note into the letter at the cursor, or behind the sentence that the cursor stands in, as if it were typed: the browser's own undo
// takes it back, and so does a button for as long as nothing else was typed. The cursor stands behind it.
const form = document.querySelector('[data-keeps-typing]');
const select = document.getElementById('f-NotePart');
const said = document.getElementById('letter-note-said');
if (form && select) {
  let last = null;
  let takeBack = null;
  const back = document.getElementById('letter-note-back');
  const words = document.getElementById('letter-notes').dataset;
  const atCursor = new Option(words.atCursor, 'at-cursor', true, true);
  select.prepend(atCursor);
  form.addEventListener('focusin', event => {
    if (event.target.matches('textarea[name^="Block."]')) {
      last = event.target;
      select.value = 'at-cursor';
    }
  });
  // Within a sentence a note would break it in two: it goes behind its end, or that of its line.
  const endOfSentence = (value, at) => {
    const line = value.slice(value.slice(0, at).lastIndexOf('\n') + 1, at);
    const after = value.slice(at);
    const isBetween = line.trim() === '' || /[.!?…][”’")\]]*\s+$/.test(line) || (/[.!?…][”’")\]]*$/.test(line) && /^(\s|$)/.test(after));
    if (isBetween) return at;
    const end = /[.!?…]+[”’")\]]*(?=\s|$)|(?=\n)|$/.exec(after);
    return at + end.index + end[0].length;
  };
  const put = button => {
    const isAtCursor = select.value === 'at-cursor' || select.value === '';
    const field = isAtCursor ? last : form.elements['Block.' + select.value];
    if (!field) {
      said.textContent = words.noCursor;
      select.focus();
      return;
    }

    const texts = JSON.parse(button.dataset.texts);
    const text = texts[/^Block\.reed-(\d+)-/.exec(field.name)?.[1]] ?? texts.all;
    field.closest('details').open = true;
    field.focus();
    if (!isAtCursor) field.setSelectionRange(field.value.length, field.value.length);
    else if (field.selectionStart === field.selectionEnd) {
      const end = endOfSentence(field.value, field.selectionStart);
      field.setSelectionRange(end, end);
    }

    const before = field.value.slice(0, field.selectionStart);
    const after = field.value.slice(field.selectionEnd);
    // A sentence or two go on where the cursor stands; what has paragraphs of its own gets them.
    const own = text.includes('\n') || !isAtCursor;
    const gap = own ? '\n\n' : ' ';
    const left = before.trim() === '' || before.endsWith(gap) || (!own && before.endsWith('\n')) ? '' : own && before.endsWith('\n') ? '\n' : gap;
    const right = after.trim() === '' || (own ? after.startsWith('\n\n') : /^\s/.test(after)) ? '' : own && after.startsWith('\n') ? '\n' : gap;
    const whole = left + text + right;
    if (before.length + whole.length + after.length > field.maxLength) {
      said.textContent = words.noRoom;
      return;
    }

    if (!document.execCommand('insertText', false, whole)) {
      field.setRangeText(whole, field.selectionStart, field.selectionEnd, 'end');
      field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    }

    field.setSelectionRange(field.selectionEnd - right.length, field.selectionEnd - right.length);
    said.textContent = words.done.replace('{0}', button.dataset.title);
    const stands = field.value;
    back.hidden = false;
    takeBack = () => {
      field.focus();
      if (field.value !== stands) return;
      document.execCommand('undo');
      if (field.value === stands) {
        field.value = before + after;
        field.dispatchEvent(new InputEvent('input', { bubbles: true }));
      }

      said.textContent = words.out.replace('{0}', button.dataset.title);
    };
  };
  back.addEventListener('click', () => takeBack?.());
  form.addEventListener('input', event => {
    if (event.target === last) {
      back.hidden = true;
      said.textContent = '';
    }
  });
  form.addEventListener('click', event => {
    const button = event.target.closest('[data-note-put]');
    if (button) {
      event.preventDefault();
      put(button);
    }
  });
  form.dataset.notesReady = 'yes';
}
