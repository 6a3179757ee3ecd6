namespace ReedClinic.Web.Shared.Hosting;

/// <summary>
/// Marks an address that is itself the key to what it shows: it is told to nobody, found by no search and kept nowhere, see
/// <see cref="GuardHeaders"/>.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class SecretAddressAttribute : Attribute;
