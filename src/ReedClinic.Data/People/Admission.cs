using System.Globalization;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>What is typed about who may come in; nothing is checked yet.</summary>
/// <param name="SignUpOpen">True when people may make a student's account without being invited.</param>
/// <param name="ConsentAge">The age below which a guardian has to agree, as it was typed.</param>
public sealed record Admission(bool SignUpOpen, string? ConsentAge)
{
    /// <summary>Each problem names its property here as its field.</summary>
    public IReadOnlyList<Problem> Problems() => Age is null
        ? [new Problem(nameof(ConsentAge), $"Write an age from {Domain.People.ConsentAge.Lowest} to {Domain.People.ConsentAge.Highest}, in digits.")]
        : [];

    internal void Settle(Studio studio) => studio.Admit(SignUpOpen, Age!.Value);

    private int? Age => int.TryParse(ConsentAge, NumberStyles.None, CultureInfo.InvariantCulture, out var age)
        && age >= Domain.People.ConsentAge.Lowest && age <= Domain.People.ConsentAge.Highest ? age : null;
}
