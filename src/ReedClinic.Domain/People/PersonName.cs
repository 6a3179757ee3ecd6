namespace ReedClinic.Domain.People;

/// <summary>The rules for what a person is called: as they wrote it, trimmed, one line.</summary>
public static class PersonName
{
    /// <summary>The longest name that is kept, in characters.</summary>
    public const int MaxLength = 80;

    /// <summary>The name as it will be kept, or null when it is empty, too long or holds control characters.</summary>
    /// <param name="typed">What was typed.</param>
    public static string? Read(string? typed)
    {
        var name = typed?.Trim() ?? string.Empty;
        return name.Length is 0 or > MaxLength || name.Any(char.IsControl) ? null : name;
    }
}
