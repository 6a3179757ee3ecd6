namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What was found when the parcel was opened.</summary>
internal static class ArrivalWordings
{
    internal static IReadOnlyList<string> Missing { get; } =
    [
        "I {did not find|looked for, but did not find,} <reed> (<words>) in {it|the parcel}: please {look whether it stayed at home|have a look at home|see whether it is still at home}.",
        "one reed that you {wrote about|told me of}, <reed> (<words>), was not {there|in the parcel}; perhaps it is still {on your desk|at home|in its case}.",
    ];

    internal static IReadOnlyList<string> Extra { get; } =
    [
        "there was one reed more than you {wrote about|told me of} (<words>), {and I call it|which I call} <reed>.",
        "{I also found|the parcel also held} a reed that you had {not written about|said nothing of} (<words>); {I call it|here it is} <reed>.",
    ];

    internal static IReadOnlyList<string> ExtraLeft { get; } =
    [
        "{because|as|since} you {said|had said} nothing about it, I {left its cane alone|took nothing away from it|did not scrape it}.",
    ];

    internal static IReadOnlyList<string> Damaged { get; } =
    [
        "when I {unpacked the reeds|opened the box}, I {saw|found} this on <reed>: <words>.",
        "{on|of} <reed> I {noted|wrote down} this when I {unpacked the parcel|opened the box}: <words>.",
    ];

    internal static IReadOnlyList<string> Damp { get; } =
    [
        "I found <reed> still damp, so {I let it dry|it had to dry} before anything else; {next time give it|please give it} a day in the open before you pack it.",
        "<reed> was {still|a little} damp when it came, and I {let it dry first|gave it time to dry}; {a day in the open before packing is enough|a day in the open before you pack it will do}.",
    ];

    internal static IReadOnlyList<string> OthersDry { get; } =
    [
        "{please let|let} your other reeds dry well before {they go into a case|you close their case|you put them away}.",
    ];
}
