/* What the parent theme's scripts ask for by these names: to keep a value in the browser under the
   site's own path, and to get it again. It runs before all others, and where a page tells its scope. */
var __md_scope = new URL(document.currentScript.dataset.scope, location);

function __md_hash(text) {
  return Array.from(text).reduce(function (sum, sign) {
    return (sum << 5) - sum + sign.charCodeAt(0);
  }, 0);
}

/* A browser may refuse storage, and what stands there may be no JSON: then nothing was kept. */
function __md_get(name, storage, scope) {
  try {
    return JSON.parse((storage || localStorage).getItem((scope || __md_scope).pathname + "." + name));
  } catch (refused) {
    return null;
  }
}

function __md_set(name, value, storage, scope) {
  try {
    (storage || localStorage).setItem((scope || __md_scope).pathname + "." + name, JSON.stringify(value));
  } catch (refused) {
    return;
  }
}
