using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Bench;

namespace ReedClinic.Domain.Tests.Recurrence;

/// <summary>Sheets written by hand: one text for each reed, “+kind” found, “?kind” suspected, “-kind” looked for and not there.</summary>
internal static class Sheets
{
    public static StudentHistory History(params FindingSheet[] batches) => new(batches);

    public static FindingSheet Batch(int number, params string[] reeds)
    {
        var ids = reeds.Select((_, at) => Reed(number, at)).ToList();
        return new FindingSheet(ids, reeds.SelectMany((said, at) => Rows(ids[at], said)));
    }

    public static ReedId Reed(int batch, int at) => new(Writer.Number(40 + batch, at));

    private static IEnumerable<SheetRow> Rows(ReedId reed, string said)
    {
        var writer = new Writer();
        foreach (var word in said.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var kind = new FindingKindId(word[1..]);
            writer.Say(word[0] == '-'
                ? Writer.Value(LookedFor.Of(kind, words: kind.IsInWords ? "our own" : null))
                : Writer.Value(Finding.Of(
                    kind, FindingCatalogue.Find(kind)?.Usually ?? FindingCharacter.Fault, new Place(Zone.TipCorners), certainty: word[0] == '?' ? Certainty.Suspected : Certainty.Certain, words: kind.IsInWords ? "our own" : null)));
        }

        return SheetRow.Of(reed, writer.Log);
    }
}
