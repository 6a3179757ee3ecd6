using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Demo;

/// <summary>What was found and done at the bench of the demo, reed by reed.</summary>
internal static class DemoWork
{
    private const KnownBy LightAndPlaque = KnownBy.Light | KnownBy.Plaque;

    /// <summary>Spring: thick corners in all three, and a thick back in one.</summary>
    public static async Task SpringFirstAsync(DemoBench at)
    {
        await at.TestAsync(TestKind.Opening, 2).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 0, "C +25").ConfigureAwait(false);
        await at.TestAsync(TestKind.SoftestStart, 0).ConfigureAwait(false);
        await at.TestAsync(TestKind.LowResponse, 1).ConfigureAwait(false);
        var corners = await ThickCornersAsync(at).ConfigureAwait(false);
        await at.StrengthAsync("heart-well-kept", Zone.HeartCentre, FindingShape.Spot, KnownBy.Light).ConfigureAwait(false);
        await at.StrengthAsync("spine-intact", Zone.Spine, FindingShape.Spot, KnownBy.Light).ConfigureAwait(false);
        await at.NotThereAsync("back-thick", KnownBy.Finger).ConfigureAwait(false);
        await at.LeaveAloneAsync(Zone.HeartCentre, "It gives this reed its warm middle.").ConfigureAwait(false);
        var risk = await at.RiskAsync("A corner may tear: the cane is dry there.", Zone.TipCorners).ConfigureAwait(false);
        await at.AdjustAsync("thin-corners", new Place(Zone.TipCorners), new(Strokes: 2), corners).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 0, "C +10").ConfigureAwait(false);
        await at.TestAsync(TestKind.SoftestStart, 2).ConfigureAwait(false);
        await at.AdjustAsync("thin-tip-sides", new Place(Zone.TipSides), new(Strokes: 2), corners, Zone.TipCentre).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 0, "C").ConfigureAwait(false);
        await at.TestAsync(TestKind.SoftestStart, 3).ConfigureAwait(false);
        await at.TestAsync(TestKind.LowResponse, 2).ConfigureAwait(false);
        await at.CloseRiskAsync(risk, RiskOutcome.DidNotHappen).ConfigureAwait(false);
        await at.EndAsync(corners, FindingEnding.Gone).ConfigureAwait(false);
        await at.EndsAsync(VerdictKind.Improved, "It starts on a breath now; more would cost the middle notes.", "I did not touch the middle of the heart, so as to keep the middle notes as you like them.")
            .ConfigureAwait(false);
    }

    public static async Task SpringSecondAsync(DemoBench at)
    {
        await at.TestAsync(TestKind.Opening, 3).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 1, "C# -20").ConfigureAwait(false);
        await at.TestAsync(TestKind.Effort, 4).ConfigureAwait(false);
        await at.TestAsync(TestKind.SoftestStart, 0).ConfigureAwait(false);
        var corners = await ThickCornersAsync(at).ConfigureAwait(false);
        var back = await at.FaultAsync("back-thick", new Place(Zone.Windows), FindingShape.Spot, KnownBy.Finger | KnownBy.Ear).ConfigureAwait(false);
        await at.StrengthAsync("heart-well-kept", Zone.HeartCentre, FindingShape.Spot, KnownBy.Light).ConfigureAwait(false);
        await at.AdjustAsync("open-windows", new Place(Zone.Windows), new(Strokes: 4), back).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 1, "C +15").ConfigureAwait(false);
        await at.TestAsync(TestKind.Effort, 3).ConfigureAwait(false);
        await at.AdjustAsync("thin-corners", new Place(Zone.TipCorners), new(Strokes: 1), corners).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 0, "C +5").ConfigureAwait(false);
        await at.TestAsync(TestKind.Effort, 2).ConfigureAwait(false);
        await at.TestAsync(TestKind.SoftestStart, 2).ConfigureAwait(false);
        await at.EndAsync(corners, FindingEnding.Better).ConfigureAwait(false);
        await at.EndAsync(back, FindingEnding.Gone).ConfigureAwait(false);
        await at.EndsAsync(VerdictKind.Improved, "It had become easy enough to blow.", "It is a good reed for practice.")
            .ConfigureAwait(false);
    }

    public static async Task SpringThirdAsync(DemoBench at)
    {
        await at.TestAsync(TestKind.Opening, 2).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 0, "C -5").ConfigureAwait(false);
        await at.TestAsync(TestKind.LowResponse, 1).ConfigureAwait(false);
        var corners = await ThickCornersAsync(at).ConfigureAwait(false);
        await at.StrengthAsync("heart-well-kept", Zone.HeartCentre, FindingShape.Spot, KnownBy.Light).ConfigureAwait(false);
        await at.StrengthAsync("spine-intact", Zone.Spine, FindingShape.Spot, KnownBy.Light).ConfigureAwait(false);
        await at.NotThereAsync("back-thick", KnownBy.Finger).ConfigureAwait(false);
        await at.AdjustAsync("thin-corners", new Place(Zone.TipCorners), new(Strokes: 1), corners).ConfigureAwait(false);
        await at.TestAsync(TestKind.LowResponse, 3).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 0, "C").ConfigureAwait(false);
        await at.EndAsync(corners, FindingEnding.Gone).ConfigureAwait(false);
        await at.EndsAsync(VerdictKind.GoodOnArrivalRefined, "Little was missing.", "I would be glad to hear it in the band.").ConfigureAwait(false);
    }

    /// <summary>Autumn: the corners are thin in all three, and none has a clear line between heart and tip.</summary>
    public static async Task AutumnAsync(DemoBench at, string crowBefore, string crowAfter, bool blends)
    {
        await at.TestAsync(TestKind.Opening, 2).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 1, crowBefore).ConfigureAwait(false);
        await at.TestAsync(TestKind.TonguedStarts, 1).ConfigureAwait(false);
        await at.TestAsync(TestKind.Edge, 1).ConfigureAwait(false);
        await at.NotThereAsync("tip-corners-thick", LightAndPlaque).ConfigureAwait(false);
        await at.NotThereAsync("back-thick", KnownBy.Finger).ConfigureAwait(false);
        var line = await at.FaultAsync("tip-not-separate", new Place(Zone.Rooftop), FindingShape.SeparationAlong, KnownBy.Light).ConfigureAwait(false);
        await at.StrengthAsync("heart-well-kept", Zone.HeartCentre, FindingShape.Spot, KnownBy.Light).ConfigureAwait(false);
        await at.StrengthAsync("tip-falls-to-sides", Zone.TipCentre, FindingShape.ShapeAcross, LightAndPlaque).ConfigureAwait(false);
        await at.AdjustAsync("define-tip", new Place(Zone.Rooftop), new(Words: "light strokes, all four quarters"), line, Zone.HeartCentre)
            .ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, 0, crowAfter).ConfigureAwait(false);
        await at.TestAsync(TestKind.TonguedStarts, 2).ConfigureAwait(false);
        if (blends)
        {
            await at.AdjustAsync("blend", new Place(Zone.Transition), new(Strokes: 4), line).ConfigureAwait(false);
            await at.TestAsync(TestKind.Crow, 0, crowAfter).ConfigureAwait(false);
            await at.TestAsync(TestKind.TonguedStarts, 3).ConfigureAwait(false);
        }

        await at.TestAsync(TestKind.Edge, 2).ConfigureAwait(false);
        await at.EndAsync(line, blends ? FindingEnding.Gone : FindingEnding.Better).ConfigureAwait(false);
    }

    /// <summary>The few tests of a first look, before any knife.</summary>
    public static async Task FirstLookAsync(DemoBench at, int opening, int crow, string pitch, int start, int low, int effort)
    {
        await at.TestAsync(TestKind.Opening, opening).ConfigureAwait(false);
        await at.TestAsync(TestKind.Crow, crow, pitch).ConfigureAwait(false);
        await at.TestAsync(TestKind.SoftestStart, start).ConfigureAwait(false);
        await at.TestAsync(TestKind.LowResponse, low).ConfigureAwait(false);
        await at.TestAsync(TestKind.Effort, effort).ConfigureAwait(false);
    }

    private static Task<EntryId> ThickCornersAsync(DemoBench at) => at.UnevenAsync(
        "tip-corners-thick", new Place(Zone.TipCorners), Relation.ThickerThan, new Place(Zone.TipSides), LightAndPlaque);
}
