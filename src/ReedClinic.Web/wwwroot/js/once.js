// A form that must not be sent twice: its button goes off with the first press, and comes back with the page.

const forms = document.querySelectorAll("form[data-once]");

function press(form, off) {
  form.querySelectorAll("button").forEach((button) => { button.disabled = off; });
}

// After the form was read, or the button itself would be left out of it.
forms.forEach((form) => form.addEventListener("submit", () => setTimeout(() => press(form, true))));
window.addEventListener("pageshow", () => forms.forEach((form) => press(form, false)));
