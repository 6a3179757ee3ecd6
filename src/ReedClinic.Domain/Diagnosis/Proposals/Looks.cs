using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>What is looked at before anything is done: nothing of it touches the cane.</summary>
internal sealed class Looks(ReedNow now)
{
    /// <summary>So many of the tests that would rule a warning out; more would only be noise.</summary>
    private const int MostWarnings = 2;

    /// <summary>The looks that are due.</summary>
    /// <param name="standing">What may be done and is worth more than stopping.</param>
    /// <param name="warned">What mustn’t be begun with, and the sign that would tell whether it may.</param>
    internal IReadOnlyList<Proposal> Due(IReadOnlyList<Weighed> standing, IReadOnlyList<(AdjustmentEntry Entry, LikelyCause By, Sign? Tell)> warned)
    {
        List<Proposal?> looks = [];
        if (now.Untested)
        {
            looks.Add(Of("crow-soft", "Try it before more cane goes", "What several changes did together can’t be told apart.", EvidenceMark.Published(TradeTexts.ReedFixes)));
        }

        if (standing.Count > 0 || warned.Count > 0 || now.Causes.Counted.Count == 0)
        {
            looks.AddRange(First());
        }

        if (now.Causes.Counted.Count == 0)
        {
            looks.Add(Of("crow-soft", "Nothing has been tried yet", "Begin with the crow.", EvidenceMark.CommonPractice));
        }

        if (now.CrowIsLow && now.Has("feels-hard") && !now.Looked("centre-closes-first"))
        {
            looks.Add(Of("closing-order", "Flat and hard at once", "It often comes from how the reed closes.", EvidenceMark.CommonPractice));
        }

        if (now.Length is null && now.Floor is not null && standing.Any(one => one.Entry.Id.Value is "clip" or "clip-hair"))
        {
            looks.Add(Of("length", "Not yet measured: the length", "Before and after a clip, it tells how much may still go.", EvidenceMark.CommonPractice));
        }

        looks.AddRange(warned.Where(one => one.Tell is not null).DistinctBy(one => one.Tell!.Test).Take(MostWarnings)
            .Select(one => Of(one.Tell!.Test.Value, $"Not yet looked at: whether {one.Tell.Name}", $"It may be: {one.By.Cause.Name}. Then it is better not to {one.Entry.Name} first.", one.By.Cause.StepsMark)));
        return [.. looks.OfType<Proposal>().DistinctBy(look => look.Test)];
    }

    /// <summary>Wetness, leaks, instrument and player, before any remedy.</summary>
    private IEnumerable<Proposal?> First()
    {
        yield return now.Checks.Wet ? null : Of("ready-puff", "First, whether it is wet enough", "A dry reed shows faults that it hasn’t got.", EvidenceMark.CommonPractice);
        yield return now.Checks.Sealed ? null : Of("seal-draw", "First, whether it leaks", "A leak feels like half the faults there are.", EvidenceMark.CommonPractice);
        yield return now.Checks.Instrument ? null
            : Of("another-reed", "First, whether it is the reed at all", "Pads and vents feel like a bad reed.", new EvidenceMark(Evidence.Published, "Lewis, “Taming the Oboe”, The Instrumentalist, March 2010"));
        yield return now.Checks.Player ? null
            : Of("another-player", "First, whether it is how it is played", "Lip, angle and air make any reed sharp, flat or hard.",
                EvidenceMark.Published("Colwell, Hewitt & Fonder, The Teaching of Instrumental Music, 5th ed., oboe chapter, p. 226"));
    }

    /// <summary>A look; null where the studio no longer uses the test.</summary>
    private Proposal? Of(string id, string lead, string why, EvidenceMark mark) =>
        now.Catalogue.Find(new TestCardId(id)) is { Retired: false } card
            ? new Proposal(
                ProposalKind.Look, null, card.Id, null, null, 0, 0, 0,
                new ProposalWords($"{lead}: {card.Name}.", card.How, $"{char.ToUpperInvariant(card.Right[0])}{card.Right[1..]} is right; otherwise: {card.Otherwise}. {why}", "It costs nothing but time.", []),
                [new KnownNumber(card.Name, mark), new KnownNumber(card.How, card.Mark), new KnownNumber(card.Otherwise, card.Mark)])
            : null;
}
