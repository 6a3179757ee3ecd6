namespace ReedClinic.Web.Features.Intake;

/// <summary>The tuning notes that are offered, and the field for another one.</summary>
public static class TuningChoices
{
    /// <summary>The value that means "the number in the field below".</summary>
    public const string Another = "another";

    /// <summary>The name of that field.</summary>
    public const string AnotherField = "TunesToAnother";

    /// <summary>What is offered (common practice).</summary>
    public static readonly string[] Offered = ["440", "441", "442", "443"];
}
