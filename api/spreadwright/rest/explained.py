"""What every kind of problem means, and what helps: by the last part of its `type`."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Explanation:
    """One kind of problem in words: what it means, and what to do about it."""

    means: str
    remedy: str


EXPLAINED: dict[str, Explanation] = {
    "bad-cursor": Explanation(
        "The `after` of a list is none that this service gave out, or belongs to another order.",
        "Follow the `next` link of the `Link` header as it is, and begin at the first page after changing `sort`.",
    ),
    "bad-id": Explanation(
        "The id that was wished for a document is not written as ids are.",
        "Take small letters, digits and single hyphens, or leave it out: then one is made from the title.",
    ),
    "bad-query": Explanation(
        "Something after the question mark is unknown, stands twice, or has a value out of its bounds. "
        "`errors` names each such parameter.",
        "Compare the parameters with the reference; `remedy` says what each of them takes.",
    ),
    "busy": Explanation(
        "As much work is under way as this service takes on at a time. Nothing is wrong with the request.",
        "Send the same request again after the seconds in `Retry-After`.",
    ),
    "cannot-draw": Explanation(
        "The picture was asked for in a size, or needs something, that cannot be drawn.",
        "Ask for a smaller `width`, or for SVG, which has no pixels.",
    ),
    "condition-required": Explanation(
        "A change has to say which revision it was made from, so that nobody's work is overwritten unseen.",
        "Read the document, and send its `ETag` back in `If-Match` with the change. "
        "To put a new one, send `If-None-Match: *`.",
    ),
    "database-busy": Explanation(
        "The database did not answer in time. What was asked was not done.",
        "Send the same request again after the seconds in `Retry-After`.",
    ),
    "exists": Explanation(
        "The request was to create a document only if there was none (`If-None-Match: *`), and there is one.",
        "Read it, and change it with `If-Match`; or take another id.",
    ),
    "forbidden": Explanation(
        "The token is good, but lacks the scope for this, or the document belongs to somebody else.",
        "Use a token with the scope that `WWW-Authenticate` names, or ask the owner.",
    ),
    "gone": Explanation(
        "There was a document of that name, and it was deleted. Its revisions can still be read.",
        "Restore one of its revisions, or take another id.",
    ),
    "id-taken": Explanation(
        "Another document has the id that was wished for, or had it before it was deleted.",
        "Take another id, or leave it out: then one is made from the title.",
    ),
    "internal": Explanation(
        "The service has a fault. It was logged together with the id of the request.",
        "Tell whoever runs the service that id; it stands in `X-Request-Id`.",
    ),
    "invalid-document": Explanation(
        "The document can be read, but cannot be worked with: parts do not add up, papers are missing, "
        "a licence does not fit. `errors` names each place as a JSON Pointer.",
        "Mend what `errors` names. `POST /check` finds the same, and warns of more.",
    ),
    "invalid-token": Explanation(
        "The token is unknown, has expired or was revoked, or `Authorization` is not written as RFC 6750 says.",
        "Send `Authorization: Bearer …` with a token that is still good; `spreadwright token` makes one.",
    ),
    "key-reused": Explanation(
        "The `Idempotency-Key` was used before, for another request.",
        "Make a new key for every new thing that is to be created; repeat a key only to repeat a request.",
    ),
    "method-not-allowed": Explanation(
        "There is something at this address, but it does not take this method.",
        "Use one of the methods that `Allow` names.",
    ),
    "no-colourway": Explanation(
        "The papers of the set do not fill every role: a kind of paper is missing, or a sheet is too small.",
        "Ask with another `set`, or leave it out: then the first set that fits is taken.",
    ),
    "no-plan": Explanation(
        "It is proved that the pieces cannot be cut from these sheets. `errors` says why.",
        "Add sheets, let pieces be turned, or make some of them smaller or optional.",
    ),
    "no-token": Explanation(
        "Reading is open to all; this is not.",
        "Send `Authorization: Bearer …`; `spreadwright token` makes a token.",
    ),
    "not-acceptable": Explanation(
        "What is here comes in none of the media types that `Accept` allows. `available` lists those that there are.",
        "Ask for one of them, by `Accept` or by a suffix such as `.json`.",
    ),
    "not-found": Explanation(
        "There is nothing at this address, and nothing ever was.",
        "Look for the address in the reference; `detail` names one that is near.",
    ),
    "not-ready": Explanation(
        "The service is up, but its database does not answer.",
        "Ask again in a few seconds.",
    ),
    "plan-too-long": Explanation(
        "No plan was found in the time given. That proves nothing: there may be one.",
        "Ask with more `seconds`, another `seed`, or fewer pieces.",
    ),
    "print-too-long": Explanation(
        "The recipe has more pieces than a booklet is printed for on demand, or the print would have more pages.",
        "Print it on a machine of your own: `spreadwright booklet` and `spreadwright templates` have no such bound.",
    ),
    "request-timeout": Explanation(
        "The request did not arrive in full in the time that it may take.",
        "Send it again over a quicker connection, or send less.",
    ),
    "stale-write": Explanation(
        "Somebody else changed the document after the revision that `If-Match` names. Nothing was overwritten.",
        "Read it again, make the change anew, and send the new `ETag`.",
    ),
    "too-large": Explanation(
        "The body is larger than is taken; `detail` says how large it may be.",
        "Send less at a time.",
    ),
    "too-many-jobs": Explanation(
        "As many of your jobs are unfinished as one client may have.",
        "Wait until one of them is done, or cancel one with `DELETE`.",
    ),
    "too-many-requests": Explanation(
        "One client may ask for so much in a minute, and this was more. `RateLimit` tells what is left.",
        "Wait for the seconds in `Retry-After`.",
    ),
    "unfinished": Explanation(
        "The job is queued, runs, or was cancelled: there is no result.",
        "Ask the job itself after `Retry-After` seconds; it has a link `result` when there is one.",
    ),
    "unknown-name": Explanation(
        "The address is right, but names a recipe, paper set, bench, sheet or representation that there is not.",
        "`errors` names the nearest one that there is; the lists have them all.",
    ),
    "unreadable-document": Explanation(
        "The body is no document: no JSON (RFC 8259) in UTF-8, a member that stands twice, a number out of range, "
        "too deep, or none of the kinds that are known.",
        "Mend the place that `errors` names. The schemas are at `/schema`.",
    ),
    "unreadable-picture": Explanation(
        "A photo is of another kind than JPEG, PNG, WebP or HEIF, is damaged, or is too large to look at.",
        "Save it anew as JPEG, and send that.",
    ),
    "unsupported-media-type": Explanation(
        "The body is of another type than this address takes, or is compressed.",
        "Name the type in `Content-Type`; documents are `application/json`, photos `multipart/form-data`.",
    ),
    "wrong-state": Explanation(
        "Drafts are published, published documents are withdrawn; this document is in another state.",
        "Read the document; its state stands beside it.",
    ),
}
"""Every kind of `problems.KINDS`; a test holds the two together."""
