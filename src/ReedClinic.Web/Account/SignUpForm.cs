using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Account;

/// <summary>What was typed to make an account.</summary>
public sealed class SignUpForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>What the person wants to be called.</summary>
    public string? Name { get; set; }

    /// <summary>What they sign in with.</summary>
    public string? Email { get; set; }

    /// <summary>Their password; never shown again.</summary>
    public string? Password { get; set; }

    /// <summary>Which side of the studio's set age they are on, as the form spells it.</summary>
    public string? Age { get; set; }

    /// <summary>The first owner's one-time code; only on the first run.</summary>
    public string? Code { get; set; }

    /// <summary>What the studio is called; only on the first run.</summary>
    public string? StudioName { get; set; }

    /// <summary>Where parcels are posted to; only on the first run.</summary>
    public string? PostTo { get; set; }

    /// <summary>Whether anybody may ask for an account; only on the first run.</summary>
    public bool? SignUpOpen { get; set; }

    /// <summary>The age below which a guardian has to agree; only on the first run.</summary>
    public string? ConsentAge { get; set; }

    /// <summary>Who may come in.</summary>
    public Admission ToAdmission() => new(SignUpOpen == true, ConsentAge);

    /// <summary>The account that is asked for.</summary>
    /// <returns>As typed; nothing is checked yet.</returns>
    public NewAccount ToNewAccount() => new(Name, Email, Password) { Age = ReadAge(Age) };

    /// <summary>An answer about one's age.</summary>
    /// <param name="typed">As a form sends it.</param>
    /// <returns>Null when it is none.</returns>
    public static AgeAnswer? ReadAge(string? typed) => typed switch
    {
        nameof(AgeAnswer.OldEnough) => AgeAnswer.OldEnough,
        nameof(AgeAnswer.Younger) => AgeAnswer.Younger,
        _ => null,
    };
}
