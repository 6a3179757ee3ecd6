using System.Globalization;

namespace ReedClinic.Web.Features.Letters.Links;

/// <summary>What was chosen to make a private link.</summary>
public sealed class LetterLinkForm
{
    /// <summary>For how many days, as text.</summary>
    public string? Days { get; set; }

    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>For how many days; 0 for what is no number.</summary>
    public int ReadDays() => int.TryParse(Days, NumberStyles.None, CultureInfo.InvariantCulture, out var days) ? days : 0;
}
