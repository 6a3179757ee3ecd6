using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>A reed that goes home put aside and without a verdict: whoever posts it is asked, whoever gets it is told what its letter tells.</summary>
/// <param name="Number">The number on its tag.</param>
/// <param name="Mark">How it is told from the others.</param>
/// <param name="IsPlayedGently">Whether the letter lets it be played gently; false where the letter itself has to be read first.</param>
public sealed record AsideReed(int Number, string Mark, bool IsPlayedGently)
{
    /// <summary>Those of a batch, in order: what has mould stays, and isn’t among them.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="logs">The logs of its reeds.</param>
    public static IReadOnlyList<AsideReed> In(Batch batch, IReadOnlyDictionary<ReedId, BenchLog> logs)
    {
        ArgumentNullException.ThrowIfNull(batch);
        var material = new LetterMaterial(batch, "", "", logs, LetterThread.Nothing);
        return
        [
            .. batch.Reeds.Where(reed => reed.IsHere && reed.Fitness != Fitness.Mould && PutAside.IsOpen(material.LogOf(reed.Id))).OrderBy(reed => reed.Number)
                .Select(reed => new AsideReed(reed.Number, reed.HowToRecognise, reed.MayBePlayed && SaidOfHarm.Of(material, reed).Count == 0 && !PlayAdvice.IsTheTeachers(material, reed))),
        ];
    }
}
