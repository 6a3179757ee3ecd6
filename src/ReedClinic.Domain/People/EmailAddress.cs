namespace ReedClinic.Domain.People;

/// <summary>The rules for an e-mail address: only what no working address breaks. Mail that arrives is the real test.</summary>
public static class EmailAddress
{
    /// <summary>The address as it will be kept, or null when it can't be one.</summary>
    /// <param name="typed">What was typed.</param>
    public static string? Read(string? typed)
    {
        var address = typed?.Trim() ?? string.Empty;
        var at = address.LastIndexOf('@');
        return address.Length > Student.LongestEmail
            || at <= 0
            || at == address.Length - 1
            || address.Any(letter => char.IsControl(letter) || char.IsWhiteSpace(letter) || letter is '<' or '>' or ',')
            ? null
            : address;
    }
}
