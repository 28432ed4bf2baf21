"""How a certificate gets onto a phone and off it again, step by step for both families of phones.

The order and the names of the menus are those of Android 11 and later and of iOS 15 and later; makers
change them a little, so each step also says what to search for. That Android wants a screen lock and
keeps a warning, that only Safari takes a profile in, and what Lockdown Mode refuses, is from memory.
"""

from typing import NamedTuple


class Step(NamedTuple):
    """One thing to do, with the picture that shows where; `height` is the picture's at a width of 288."""

    title: str
    words: str
    picture: str
    alt: str
    height: int


class Family(NamedTuple):
    """The phones of one system: `{file}` and `{authority}` in the words stand for the installation's own."""

    id: str
    title: str
    steps: tuple[Step, ...]
    after: str
    removal: str


ANDROID = Family(
    "android",
    "Android, with Chrome",
    (
        Step(
            "Get the certificate",
            "Use Chrome. The file {file} goes into your downloads; if the phone offers to keep it, keep it.",
            "android-file",
            "A phone with the file among its downloads.",
            118,
        ),
        Step(
            "Open Settings, search for “CA certificate”",
            "Or go: Security, More security, Encryption and credentials, Install a certificate, CA "
            "certificate.",
            "android-settings",
            "The list Install a certificate; the row CA certificate is marked.",
            190,
        ),
        Step(
            "Tap “Install anyway”",
            "The phone warns you; that is its way with every such certificate. It may want a "
            "screen lock first: set one.",
            "android-warning",
            "The warning of the phone; the button Install anyway is marked.",
            176,
        ),
        Step(
            "Choose {file}",
            "Tap it in the downloads. The phone says that the certificate is installed. Come back "
            "to this page.",
            "android-choose",
            "The list of downloads; the row with the certificate is marked.",
            150,
        ),
    ),
    "From now on the phone may say that the network could be monitored. It says so as long as the "
    "certificate is there. If Chrome asks for nearby devices, allow it: without, newer phones "
    "do not find the server.",
    "Settings, search for “user credentials” or “trusted credentials”, User, {authority}, remove.",
)

IPHONE = Family(
    "iphone",
    "iPhone and iPad, with Safari",
    (
        Step(
            "Get the certificate",
            "Use Safari; other browsers cannot do this. Tap Allow when it asks.",
            "iphone-allow",
            "Safari asks whether a profile may be downloaded; Allow is marked.",
            150,
        ),
        Step(
            "Within 8 minutes: Settings, “Profile Downloaded”",
            "It stands near the top. Tap it, then Install. Later than that, get the certificate again.",
            "iphone-profile",
            "The Settings; the row Profile Downloaded is marked.",
            150,
        ),
        Step(
            "Settings, General, About, Certificate Trust Settings",
            "It is the last row of About. Switch on {authority}. Without this step nothing has changed yet.",
            "iphone-trust",
            "Certificate Trust Settings; the switch beside the certificate is on and marked.",
            150,
        ),
    ),
    "Come back to this page in Safari. In Lockdown Mode an iPhone takes no profile and keeps no data for "
    "this app.",
    "Settings, General, VPN & Device Management, {authority}, Remove Profile.",
)

FAMILIES = (ANDROID, IPHONE)


def family_of(user_agent: str) -> str:
    """Returns which family a browser says it runs on, or nothing."""
    if "Android" in user_agent:
        return ANDROID.id
    return IPHONE.id if "iPhone" in user_agent or "iPad" in user_agent else ""
