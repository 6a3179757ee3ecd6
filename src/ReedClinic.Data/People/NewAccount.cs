using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>What is typed to make an account; nothing is checked yet.</summary>
/// <param name="Name">What they like to be called.</param>
/// <param name="Email">The address they sign in with.</param>
/// <param name="Password">As it was typed.</param>
public sealed record NewAccount(string? Name, string? Email, string? Password)
{
    /// <summary>Which side of the studio's set age they are on; only a student is asked.</summary>
    public AgeAnswer? Age { get; init; }

    /// <summary>What is said when a student didn't answer.</summary>
    internal static Problem AgeProblem { get; } = new(nameof(Age), "Please choose one of the two.");

    /// <summary>Each problem names its property here as its field.</summary>
    public IReadOnlyList<Problem> Problems()
    {
        List<Problem> problems = [];
        if (PersonName.ProblemWith(Name) is { } wrong)
        {
            problems.Add(new Problem(nameof(Name), wrong));
        }

        if (EmailAddress.Read(Email) is null)
        {
            problems.Add(new Problem(nameof(Email), "Write the e-mail address in full, such as name@example.org."));
        }

        if (PasswordRule.ProblemWith(Password, PasswordRule.Shortest, CommonPasswords.List, Name, Email) is { } weak)
        {
            problems.Add(new Problem(nameof(Password), weak));
        }

        return problems;
    }

    /// <summary>Keeps the password out of logs and error messages.</summary>
    public override string ToString() => $"{nameof(NewAccount)} {{ {Name} }}";
}
