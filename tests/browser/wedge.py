"""A hand scanner that types: its keys as a browser hears them."""

import asyncio
import time

GS, RS, EOT = "\x1d", "\x1e", "\x04"
_SHIFTED = dict(zip(')!@#$%^&*(_+{}|:"~<>?', "0123456789-=[]\\;'`,./", strict=True))
_NAMES = ["Minus", "Equal", "BracketLeft", "BracketRight", "Semicolon", "Quote"]
_NAMES += ["Backquote", "Backslash", "Comma", "Period", "Slash"]
_CODES = dict(zip("-=[];'`\\,./", _NAMES, strict=True))
A_KEY = 0.005  # seconds from one key, down or up, to the next
A_PAUSE = 0.6  # that ends a code without an Enter, which no hand is quicker than
_ARROWS = {GS: "ArrowLeft", RS: "ArrowUp", EOT: "F4"}


class Wedge:
    """Presses keys as a scanner does that was set up for a US keyboard."""

    def __init__(self, page):
        """Talk to the browser below its own keyboard: no library presses what scanners press."""
        self.session = page.context.new_cdp_session(page)
        self._events = []
        self._until = 0.0

    def scans(self, text, separators="ctrl", end="Enter", layout=None):
        """Type a code; `separators` is how it sends those, `layout` what the machine makes of its keys."""
        self._signs(text, separators, layout or {})
        if end:
            self._press(end, end, text="\r" if end == "Enter" else "")
        # A keyboard says when each key was pressed, however late the computer comes to it.
        began = max(time.time() - len(self._events) * A_KEY, self._until)
        self._pressed(self._events, began)
        self._until = began + len(self._events) * A_KEY + (0 if end else A_PAUSE)
        self.hand_over()

    def types(self, text, began):
        """Keep the keys of a code to be handed over, with the moments at which they were pressed."""
        first = len(self._events)
        self._signs(text, "ctrl", {})
        self._pressed(self._events[first:], began)

    def presses(self, key):
        """Press a key of its own, as the clerk does."""
        self._press(key, key)
        self.hand_over()

    def hand_over(self):
        """Hand over all keys at once, as a scanner does; waiting for an answer to each may end a code."""
        send = self.session._impl_obj.send  # the public one waits for each answer

        async def all_of_them(keys):
            await asyncio.gather(*(send("Input.dispatchKeyEvent", key, timeout=None) for key in keys))

        self.session._sync(all_of_them(self._events))
        self._events = []

    def _pressed(self, events, began):
        for number, event in enumerate(events):
            event["timestamp"] = began + number * A_KEY

    def _signs(self, text, separators, layout):
        for sign in text:
            if sign < " ":
                getattr(self, f"_{separators}")(sign)
            else:
                self._key(sign, layout.get(sign, sign))

    def _key(self, sign, key):
        plain = _SHIFTED.get(sign, sign.lower())
        code = _CODES.get(plain) or (f"Digit{plain}" if plain.isdigit() else f"Key{plain.upper()}")
        self._press(key, code, text=key, modifiers=8 if plain != sign else 0)

    def _ctrl(self, sign):
        """Ctrl and the key 64 places on (npm @point-of-sale/keyboard-barcode-scanner)."""
        key = chr(ord(sign) + 64)
        code = {"]": "BracketRight", "^": "Digit6"}.get(key, f"Key{key}")
        self._press(key if key in "]^" else key.lower(), code, modifiers=2 | (8 if key == "^" else 0))

    def _alt(self, sign):
        """Alt held while its number is typed on the block of digits, NumLock off (odoo/odoo#99730)."""
        named = {"0": "Insert", "2": "ArrowDown", "3": "PageDown", "4": "ArrowLeft", "9": "PageUp"}
        self._press("Alt", "AltLeft", modifiers=1, up=False)
        for digit in f"0{ord(sign)}":
            self._press(named[digit], f"Numpad{digit}", modifiers=1)
        self._events.append({"type": "keyUp", "key": "Alt", "code": "AltLeft"})

    def _raw(self, sign):
        """The bare character: a key press without a name (facts read off Chromium)."""
        self._press("", "", text=sign)

    def _arrows(self, sign):
        """Function keys in their place, as some makers map them; from memory."""
        self._press(_ARROWS[sign], _ARROWS[sign])

    def _none(self, sign):
        """Left out by the device (OCA/stock-logistics-barcode#230)."""

    def _press(self, key, code, text="", modifiers=0, up=True):
        known = {"Enter": 13, "Tab": 9, "F4": 115, "F2": 113, "F8": 119}
        event = {"key": key, "code": code, "modifiers": modifiers, "windowsVirtualKeyCode": known.get(key, 0)}
        self._events.append({"type": "keyDown", "text": text, **event})
        if up:
            self._events.append({"type": "keyUp", **event})
