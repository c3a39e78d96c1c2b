// Before anything is painted, and without anything else of the page: what stands in it may be of another unit; and a
// start that fails is told, since the program itself cannot tell that. Written for browsers that know no modules.
(function () {
  var root = document.documentElement;

  /** Shows why the page does not go on; what was told first is the cause. */
  function tell(trouble) {
    if (root.getAttribute('data-trouble')) return;
    root.setAttribute('data-trouble', trouble);
    var place = document.getElementById('trouble');
    if (place) place.focus();
  }

  /** Whether the program itself broke down: nothing of it goes on then. */
  function isStopped(error) {
    return typeof WebAssembly === 'object' && error instanceof WebAssembly.RuntimeError;
  }

  addEventListener('error', function (event) {
    if (event.target && event.target.id === 'start') tell('missing');
    else if (isStopped(event.error)) tell('stopped');
  }, true);
  addEventListener('unhandledrejection', function (event) {
    if (isStopped(event.reason)) tell('stopped');
  });
  addEventListener('notstarted', function (event) {
    tell(isStopped(event.error) ? 'stopped' : event.message);
  });
  // An answer of an older kind to a press of the way on would lose the link of the unit.
  addEventListener('click', function (event) {
    var within = function (selector) { return event.target.closest && event.target.closest(selector); };
    // Before there is a program nothing is skipped, and the address keeps its link.
    if (within('#shell a.skip')) event.preventDefault();
    if (within('a[href=""]')) {
      event.preventDefault();
      location.reload();
    }
  });
  if (!('noModule' in document.createElement('script'))) tell('old');

  var known = location.hash.length > 1;
  try {
    for (var at = 0; at < localStorage.length; at += 1) known = known || /^slotwright-desk-/.test(localStorage.key(at));
  } catch (refused) {
    // Without storage nothing is known.
  }
  if (known) root.classList.add('other-unit');
})();
