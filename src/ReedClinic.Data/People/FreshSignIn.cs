using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Data.People;

/// <summary>What is said to somebody who wants to do what can't be taken back, and signed in too long ago for it.</summary>
public static class FreshSignIn
{
    /// <summary>The field of that problem.</summary>
    public const string Field = "Fresh";

    /// <summary>The problem.</summary>
    internal static Problem Problem { get; } = new(Field, "Please show once more that it is you: this can’t be taken back.");
}
