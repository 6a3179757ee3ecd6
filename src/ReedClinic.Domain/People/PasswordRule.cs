namespace ReedClinic.Domain.People;

/// <summary>
/// What a password must be: long. Nothing is asked of its letters, and every character is taken as it was typed.
/// </summary>
/// <remarks>
/// At least 15 characters where the password is the only factor, no rules of composition, each Unicode code point
/// counted as one character: NIST SP 800-63B-4, section 3.1.1.2.
/// </remarks>
public static class PasswordRule
{
    /// <summary>The fewest characters (Unicode code points).</summary>
    public const int Shortest = 15;

    /// <summary>The most characters (Unicode code points), so that nobody can make the server hash a book.</summary>
    public const int Longest = 256;

    /// <summary>What is wrong with a password, in one plain sentence; null when nothing is.</summary>
    /// <param name="typed">What was typed, untrimmed.</param>
    public static string? ProblemWith(string? typed)
    {
        var length = typed?.EnumerateRunes().Count() ?? 0;
        return length switch
        {
            < Shortest => $"Choose a password of at least {Shortest} characters. A few words in a row are easy to remember.",
            > Longest => $"That is more than {Longest} characters. A shorter password is enough.",
            _ => null,
        };
    }
}
