namespace ReedClinic.Domain.Outcomes;

/// <summary>What was wrong with one thing that was typed.</summary>
/// <param name="Field">The name of the form field, as the form spells it; empty for the whole form.</param>
/// <param name="Message">One plain sentence that says what to do.</param>
public readonly record struct Problem(string Field, string Message);

/// <summary>
/// How an operation ended. Expected endings are values; broken promises are exceptions.
/// </summary>
/// <typeparam name="T">What the operation gives when it is done.</typeparam>
public abstract record Outcome<T>
{
    private Outcome()
    {
    }

    /// <summary>It was done (now, or by an earlier try with the same operation id).</summary>
    /// <param name="Value">What came of it.</param>
    public sealed record Done(T Value) : Outcome<T>;

    /// <summary>There is no such thing, or it is not this actor's to see: the two are never told apart.</summary>
    public sealed record NotFound : Outcome<T>;

    /// <summary>Somebody else changed it first. Nothing was written.</summary>
    /// <param name="Theirs">What stands now.</param>
    public sealed record Conflict(T Theirs) : Outcome<T>;

    /// <summary>What was typed can't be taken as it is. Nothing was written.</summary>
    /// <param name="Problems">One or more problems, each naming its field.</param>
    public sealed record Refused(IReadOnlyList<Problem> Problems) : Outcome<T>;
}
