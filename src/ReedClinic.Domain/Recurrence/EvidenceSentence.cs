using System.Globalization;

namespace ReedClinic.Domain.Recurrence;

/// <summary>Says counts as a teacher would: "in all three reeds", never as a percentage.</summary>
public static class EvidenceSentence
{
    private static readonly string[] Numbers =
        ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>One sentence about this batch and the reeds before it.</summary>
    /// <param name="inBatch">In this batch.</param>
    /// <param name="before">In the student's other batches.</param>
    /// <returns>The sentence, with a capital and a full stop.</returns>
    public static string For(Tally inBatch, Tally before)
    {
        var sentence = InBatch(inBatch);
        if (inBatch.Suspected > 0)
        {
            sentence += inBatch.Suspected == inBatch.Found
                ? ", so far only suspected"
                : $", in {Number(inBatch.Suspected)} of them only suspected";
        }

        return $"{sentence}{Earlier(before, inBatch.Found > 0)}.";
    }

    /// <summary>A number in words up to twelve, in figures above.</summary>
    /// <param name="number">0 or more.</param>
    /// <returns>The word.</returns>
    public static string Number(int number) => number < Numbers.Length
        ? Numbers[number]
        : number.ToString(CultureInfo.InvariantCulture);

    private static string InBatch(Tally tally)
    {
        if (tally.Looked == 0)
        {
            return "Not looked for in this batch";
        }

        if (tally.Looked < tally.Reeds)
        {
            // The others were looked at as well, only not for this: so it says for what, and how many there are beside.
            var looked = tally.Looked == 1 ? $"{InThe(tally)} one reed" : $"In {OutOf(tally)} reeds";
            return $"{looked} looked at for it ({Number(tally.Reeds)} in the batch)";
        }

        return tally.Reeds == 1 ? $"{InThe(tally)} one reed of this batch" : $"In {OutOf(tally)} reeds";
    }

    private static string InThe(Tally tally) => tally.Found == 0 ? "Not in the" : "In the";

    private static string OutOf(Tally tally)
    {
        if (tally.Found != tally.Looked)
        {
            return $"{Number(tally.Found)} of the {Number(tally.Looked)}";
        }

        return tally.Looked == 2 ? "both" : $"all {Number(tally.Looked)}";
    }

    private static string Earlier(Tally before, bool foundNow)
    {
        if (before.Looked == 0)
        {
            return "";
        }

        if (before.Found == 0)
        {
            var none = before.Looked == 1 ? "not in the one" : $"in none of the {Number(before.Looked)}";
            return foundNow ? $"; {none} looked at for it before" : $", and {none} looked at for it before";
        }

        var some = before.Looked == 1 ? "in the one" : $"in {OutOf(before)}";
        return foundNow ? $", and {some} looked at for it before" : $"; it was {some} looked at for it before";
    }
}
