/* A button that copies a text of the page, and says so beside it. */
(function () {
  "use strict";

  /* The clipboard is there for pages of a safe origin alone; elsewhere the old command does it. */
  function copy(field) {
    if (navigator.clipboard && window.isSecureContext) return navigator.clipboard.writeText(field.value);
    field.select();
    return document.execCommand("copy") ? Promise.resolve() : Promise.reject(new Error("refused"));
  }

  function tell(button, words) {
    button.parentNode.querySelector("[role=status]").textContent = words;
  }

  document.addEventListener("click", function (event) {
    const button = event.target.closest("[data-copy]");
    if (!button) return;
    const field = document.getElementById(button.dataset.copy);
    copy(field).then(
      function () { tell(button, "Copied."); },
      function () {
        field.focus();
        field.select();
        tell(button, "The browser did not copy it; the text is selected.");
      }
    );
  });

  function show() {
    document.querySelectorAll("[data-copy]").forEach(function (button) { button.hidden = false; });
  }

  /* Instant navigation exchanges the page without loading it again. */
  if (window.document$) window.document$.subscribe(show);
  else show();
})();
