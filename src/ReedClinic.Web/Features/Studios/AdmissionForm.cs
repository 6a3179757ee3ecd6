using ReedClinic.Data.People;

namespace ReedClinic.Web.Features.Studios;

/// <summary>What was typed about who may come in.</summary>
public sealed class AdmissionForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>The version it was opened on.</summary>
    public Guid Version { get; set; }

    /// <summary>Whether anybody may ask for an account.</summary>
    public bool SignUpOpen { get; set; }

    /// <summary>The age below which a guardian has to agree, as typed.</summary>
    public string? ConsentAge { get; set; }

    /// <summary>What is asked for; nothing is checked yet.</summary>
    public Admission ToAdmission() => new(SignUpOpen, ConsentAge);
}
