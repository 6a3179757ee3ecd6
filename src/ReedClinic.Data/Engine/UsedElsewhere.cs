namespace ReedClinic.Data.Engine;

/// <summary>What is said of a form whose operation id was used for something else already.</summary>
internal static class UsedElsewhere
{
    internal const string Words = "This form was used for something else already. Nothing was saved: open it anew and save again.";
}
