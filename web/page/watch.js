// Before anything is painted: whether the drawing that stands in the page may be of another unit than will be shown.
(function () {
  var known = location.hash.length > 1;
  try {
    for (var at = 0; at < localStorage.length; at += 1) known = known || /^slotwright-desk-/.test(localStorage.key(at));
  } catch (refused) {
    // Without storage nothing is known.
  }
  if (known) document.documentElement.classList.add('other-unit');
})();
