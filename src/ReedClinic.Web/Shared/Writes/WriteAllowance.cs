namespace ReedClinic.Web.Shared.Writes;

/// <summary>How much one account may write; the settings under <c>Writes</c>.</summary>
public sealed class WriteAllowance
{
    /// <summary>Where the settings stand.</summary>
    public const string Section = "Writes";

    /// <summary>How many writes may come at once.</summary>
    public int Burst { get; set; } = 60;

    /// <summary>How many more may follow each second.</summary>
    public double PerSecond { get; set; } = 2;

    /// <summary>Whether anybody can write at all.</summary>
    public bool IsSound => Burst >= 1 && PerSecond > 0 && double.IsFinite(PerSecond);
}
