namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>The words with which something said is put right, for all that reads corrections.</summary>
internal static class RightWords
{
    /// <summary>Words that a correction begins with, and that mean nothing else there.</summary>
    internal static readonly HashSet<string> Startled = ["sorry", "oops", "whoops", "correction", "pardon"];

    /// <summary>Words that put right wherever they stand in a short line.</summary>
    internal static readonly HashSet<string> Surely = [.. Startled, "meant", "mean", "wrong", "mistake"];

    /// <summary>Words that put right where a place is all that is said beside them.</summary>
    internal static readonly HashSet<string> Loosely = [.. Surely, "no", "nope", "wait", "was", "actually"];

    /// <summary>Words that lead up to what was meant.</summary>
    internal static readonly HashSet<string> Lead = [.. Loosely, .. "rather i i'm make that it this should be is 's have been to hang hold on my".Split(' ')];

    /// <summary>Words that may stand beside a place that is put right, and say nothing of it.</summary>
    internal static readonly HashSet<string> Beside = [.. Lead, .. "not bad the a of at in its one and but instead only just".Split(' ')];
}
